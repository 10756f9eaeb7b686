using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

/// <summary>Edits of any kind in any order, after which the server says what a fresh check of the same files says.</summary>
public sealed class EditStormTests : IDisposable
{
    /// <summary>How many edits; a few hundred in the quick run.</summary>
    private const string CountVariable = "PROCSCRIPT_STORM";

    private const int Seed = 20261125;

    /// <summary>How many edits there are from one comparison to the next.</summary>
    private const int EditsToComparison = 100;

    private static readonly string[] Scraps =
        ["undo ", "remove ", "hub_bolt", "{", "}", "\n", " ", "\"", "stage \"x\" {", "// a\n", "é", "🔧", "part x { }\n", "use \"machine.proc\"\n", "22 N.m", "\r\n"];

    private readonly TemporaryLibrary _library = Sample.Library();

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task After_a_storm_of_edits_the_findings_are_those_of_a_fresh_check()
    {
        var count = int.TryParse(Environment.GetEnvironmentVariable(CountVariable), out var asked) ? asked : 300;
        var random = new Random(Seed);
        await using var client = await EditorClient.StartAsync(_library.Path);
        var texts = new Dictionary<string, string> { ["catalog.proc"] = Sample.Catalog, ["fan/machine.proc"] = Sample.Machine, ["fan/motor.proc"] = Sample.Job };
        var documents = texts.ToDictionary(file => file.Key, file => EditorDocument.Open(client, EditorClient.UriOf(_library[file.Key]), file.Value));
        var undo = new Stack<(EditorDocument Document, string Text)>();
        var moves = 0;
        for (var i = 0; i < count; i++)
        {
            var path = documents.Keys.Order(StringComparer.Ordinal).ElementAt(random.Next(documents.Count));
            var document = documents[path];
            switch (random.Next(20))
            {
                case < 11:
                    undo.Push((document, document.Text));
                    var start = random.Next(document.Text.Length + 1);
                    var end = start + random.Next(Math.Min(12, document.Text.Length - start + 1));
                    (start, end) = (Whole(document.Text, start), Whole(document.Text, end));
                    document.Edit(start, end - start, Scraps[random.Next(Scraps.Length)]);
                    break;
                case < 16 when undo.TryPop(out var last):
                    last.Document.Set(last.Text);
                    break;
                case < 18:
                    // Whatever it answers, even that it was given up, it must not disturb the rest.
                    var (id, _) = client.Send("textDocument/completion", new JsonObject { ["textDocument"] = document.Identifier, ["position"] = document.Position(document.Text.Length / 2) });
                    client.Notify("$/cancelRequest", new JsonObject { ["id"] = id });
                    break;
                case 18 when path.StartsWith("fan/", StringComparison.Ordinal):
                    documents.Remove(path);
                    var moved = $"fan/{++moves}.proc";
                    undo = new Stack<(EditorDocument, string)>(undo.Where(edit => edit.Document != document).Reverse());
                    documents[moved] = Rename(client, document, path, moved);
                    break;
                default:
                    document.Set(texts.Values.ElementAt(random.Next(texts.Count)));
                    break;
            }

            if ((i + 1) % EditsToComparison == 0 || i + 1 == count)
            {
                await CompareAsync(client, documents, i + 1);
            }
        }
    }

    /// <summary>A place that a position can name: none within a line break of two characters.</summary>
    private static int Whole(string text, int place) => place > 0 && place < text.Length && text[place - 1] == '\r' && text[place] == '\n' ? place - 1 : place;

    /// <summary>Saves all, and holds what the server says to what a fresh one does.</summary>
    private async Task CompareAsync(EditorClient client, Dictionary<string, EditorDocument> documents, int edits)
    {
        foreach (var (path, document) in documents)
        {
            _library.With(path, document.Text);
            client.Notify("textDocument/didSave", new JsonObject { ["textDocument"] = document.Identifier });
        }

        var (fresh, told) = (await FreshAsync(documents.Values), await SettledAsync(client, documents.Values));
        Assert.True(fresh == told, $"After {edits} edits the server says\n{told}\nand a fresh one\n{fresh}");
    }

    /// <summary>As an editor does it: the old document is closed, the file gets its name, the new one is opened.</summary>
    private EditorDocument Rename(EditorClient client, EditorDocument document, string from, string to)
    {
        _library.With(from, document.Text);
        File.Move(_library[from], _library[to]);
        document.Close();
        var opened = EditorDocument.Open(client, EditorClient.UriOf(_library[to]), document.Text);
        client.Notify("workspace/didRenameFiles", new JsonObject
        {
            ["files"] = new JsonArray(new JsonObject { ["oldUri"] = EditorClient.UriOf(_library[from]), ["newUri"] = EditorClient.UriOf(_library[to]) }),
        });
        return opened;
    }

    /// <summary>What the server has told last of each document, once it has told of every last version.</summary>
    private static async Task<string> SettledAsync(EditorClient client, IEnumerable<EditorDocument> documents)
    {
        var last = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var document in documents)
        {
            document.Edit(0, 0, " ");
            document.Edit(0, 1, "");
        }

        foreach (var document in documents)
        {
            last[document.Uri] = (await document.DiagnosticsAsync()).ToJsonString();
        }

        // A document may have been told of before the last one changed: what came later counts.
        await client.RequestAsync("workspace/symbol", new JsonObject { ["query"] = "" });
        while (client.TryNext(message => message["method"]?.GetValue<string>() == "textDocument/publishDiagnostics") is { } later)
        {
            var uri = later["params"]!["uri"]!.GetValue<string>();
            if (documents.Any(document => document.Uri == uri && later["params"]!["version"]?.GetValue<int>() == document.Version))
            {
                last[uri] = later["params"]!["diagnostics"]!.ToJsonString();
            }
        }

        return string.Join("\n", last.Select(file => $"{file.Key} {file.Value}"));
    }

    /// <summary>What another server says that has never seen another text.</summary>
    private async Task<string> FreshAsync(IEnumerable<EditorDocument> documents)
    {
        await using var client = await EditorClient.StartAsync(_library.Path);
        return await SettledAsync(client, [.. documents.Select(document => EditorDocument.Open(client, document.Uri, document.Text))]);
    }
}
