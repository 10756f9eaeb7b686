using System.Text.Json.Nodes;

namespace ProcScript.LanguageServer.Tests.Clients;

/// <summary>A document that a test holds open.</summary>
internal sealed class EditorDocument
{
    private readonly EditorClient _client;

    private EditorDocument(EditorClient client, string uri, string text)
    {
        _client = client;
        Uri = uri;
        Text = text;
    }

    public string Uri { get; }

    public string Text { get; private set; }

    public int Version { get; private set; } = 1;

    public static EditorDocument Open(EditorClient client, string uri, string text)
    {
        client.Notify("textDocument/didOpen", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = uri, ["languageId"] = "procscript", ["version"] = 1, ["text"] = text },
        });
        return new EditorDocument(client, uri, text);
    }

    /// <summary>Replaces a stretch, and sends only that.</summary>
    public void Edit(int start, int length, string text)
    {
        var range = RangeOf(start, length);
        Text = Text[..start] + text + Text[(start + length)..];
        _client.Notify("textDocument/didChange", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = Uri, ["version"] = ++Version },
            ["contentChanges"] = new JsonArray(new JsonObject { ["range"] = range, ["text"] = text }),
        });
    }

    /// <summary>Makes the edits of a server, each as it was meant: by the text before all of them.</summary>
    public void Apply(JsonNode edits)
    {
        foreach (var edit in edits.AsArray().OrderByDescending(edit => OffsetOf(edit!["range"]!["start"]!)).ToList())
        {
            var start = OffsetOf(edit!["range"]!["start"]!);
            Edit(start, OffsetOf(edit["range"]!["end"]!) - start, edit["newText"]!.GetValue<string>());
        }
    }

    /// <summary>Replaces the one place where a text stands.</summary>
    public void Replace(string old, string text) => Edit(Text.IndexOf(old, StringComparison.Ordinal), old.Length, text);

    public void Set(string text)
    {
        Text = text;
        _client.Notify("textDocument/didChange", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = Uri, ["version"] = ++Version },
            ["contentChanges"] = new JsonArray(new JsonObject { ["text"] = text }),
        });
    }

    public void Close() => _client.Notify("textDocument/didClose", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = Uri } });

    public JsonObject Identifier => new() { ["uri"] = Uri };

    public JsonObject Position(int offset)
    {
        var before = Text[..offset];
        return new JsonObject { ["line"] = before.Count(letter => letter == '\n'), ["character"] = offset - (before.LastIndexOf('\n') + 1) };
    }

    public JsonObject RangeOf(int start, int length) => new() { ["start"] = Position(start), ["end"] = Position(start + length) };

    /// <summary>Parameters for the place right after the mark's text, or <paramref name="into"/> characters into it.</summary>
    public JsonObject At(string mark, int? into = null)
    {
        var found = Text.IndexOf(mark, StringComparison.Ordinal);
        Assert.True(found >= 0, $"The text does not hold '{mark}'.");
        return new JsonObject { ["textDocument"] = Identifier, ["position"] = Position(found + (into ?? mark.Length)) };
    }

    /// <summary>The text of a range.</summary>
    public string Slice(JsonNode range) => Text[OffsetOf(range["start"]!)..OffsetOf(range["end"]!)];

    public int OffsetOf(JsonNode position)
    {
        var lines = Text.Split('\n');
        return lines.Take(position["line"]!.GetValue<int>()).Sum(line => line.Length + 1) + position["character"]!.GetValue<int>();
    }

    /// <summary>The diagnostics that the server tells of this version.</summary>
    public async Task<JsonArray> DiagnosticsAsync()
    {
        var version = Version;
        var message = await _client.NextAsync(one => one["method"]?.GetValue<string>() == "textDocument/publishDiagnostics"
            && one["params"]!["uri"]!.GetValue<string>() == Uri
            && one["params"]!["version"]?.GetValue<int>() == version);
        return message["params"]!["diagnostics"]!.AsArray();
    }
}
