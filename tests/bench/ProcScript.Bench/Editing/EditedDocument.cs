using System.Text.Json.Nodes;
using ProcScript.Bench.Libraries;

namespace ProcScript.Bench.Editing;

/// <summary>A document that is open in a session.</summary>
internal sealed class EditedDocument
{
    private readonly EditorSession _session;

    private EditedDocument(EditorSession session, string uri, string text)
    {
        _session = session;
        Uri = uri;
        Lines = text.Split('\n');
    }

    /// <summary>Its address.</summary>
    public string Uri { get; }

    /// <summary>The number of its text.</summary>
    public int Version { get; private set; }

    /// <summary>The lines that it was opened with.</summary>
    public IReadOnlyList<string> Lines { get; }

    /// <summary>Opens the file at a path and waits for its findings.</summary>
    public static EditedDocument Open(EditorSession session, string path)
    {
        var (uri, text) = (new Uri(path).AbsoluteUri, File.ReadAllText(path));
        session.Tell("textDocument/didOpen", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = uri, ["languageId"] = "procscript", ["version"] = 0, ["text"] = text },
        });
        var document = new EditedDocument(session, uri, text);
        document.AwaitFindings();
        return document;
    }

    /// <summary>The numbers of the lines that hold a text.</summary>
    public int[] LinesWith(string mark) => [.. Enumerable.Range(0, Lines.Count).Where(line => Lines[line].Contains(mark, StringComparison.Ordinal))];

    /// <summary>Puts a text in the place of another.</summary>
    public void Replace(int line, int column, string old, string text)
    {
        var (breaks, last) = (LongFile.LinesIn(old), old.Length - (old.LastIndexOf('\n') + 1));
        _session.Tell("textDocument/didChange", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = Uri, ["version"] = ++Version },
            ["contentChanges"] = new JsonArray(new JsonObject
            {
                ["range"] = new JsonObject { ["start"] = Position(line, column), ["end"] = Position(line + breaks, breaks == 0 ? column + last : last) },
                ["text"] = text,
            }),
        });
    }

    /// <summary>Waits for the findings of its text.</summary>
    public void AwaitFindings() => _session.Await(message =>
        message["method"]?.GetValue<string>() == "textDocument/publishDiagnostics"
        && message["params"]!["uri"]!.GetValue<string>() == Uri
        && message["params"]!["version"]!.GetValue<int>() == Version);

    /// <summary>Asks about a place and waits for the answer.</summary>
    public void Ask(string method, int line, int column) => _session.Ask(method, new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = Uri },
        ["position"] = Position(line, column),
    });

    private static JsonObject Position(int line, int column) => new() { ["line"] = line, ["character"] = column };
}
