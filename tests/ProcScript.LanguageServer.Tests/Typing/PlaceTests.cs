using System.Text;
using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests.Typing;

/// <summary>
/// What is offered first at each place of <c>tests/editor/completion/places.txt</c>: a line has what is typed, with a bar where one asks, and
/// below it what comes first. <c>UPDATE_CASES=1</c> writes what the server says.
/// </summary>
public sealed class PlaceTests
{
    private const int Shown = 6;
    private const string Answer = "    → ";

    private static readonly string Cases = Path.Combine(Checkout.Root, "tests/editor/completion/places.txt");

    [Fact]
    public async Task Each_place_of_the_list_offers_what_it_says()
    {
        using var library = Sample.Library();
        library.With("catalog.proc", Sample.RichCatalog).With("fan/machine.proc", Sample.RichMachine);
        var snippets = new JsonObject { ["textDocument"] = new JsonObject { ["completion"] = new JsonObject { ["completionItem"] = new JsonObject { ["snippetSupport"] = true } } } };
        await using var client = await EditorClient.StartAsync(library.Path, snippets);
        var written = new StringBuilder();
        var heading = "";
        var empty = new List<string>();
        foreach (var line in await File.ReadAllLinesAsync(Cases, TestContext.Current.CancellationToken))
        {
            if (line.StartsWith(Answer, StringComparison.Ordinal))
            {
                continue;
            }

            written.Append(line).Append('\n');
            if (line.StartsWith("## ", StringComparison.Ordinal))
            {
                heading = line[3..];
            }
            else if (line.Length > 0)
            {
                var offered = await OfferedAsync(client, library, heading, line);
                written.Append(Answer).AppendJoin("  ·  ", offered.Take(Shown)).Append(offered.Count > Shown ? "  ·  …" : "").Append('\n');
                if (offered.Count == 0)
                {
                    empty.Add($"{heading}: {line}");
                }
            }
        }

        if (Environment.GetEnvironmentVariable("UPDATE_CASES") == "1")
        {
            await File.WriteAllTextAsync(Cases, written.ToString(), TestContext.Current.CancellationToken);
        }

        Assert.Empty(empty);
        Assert.Equal(await File.ReadAllTextAsync(Cases, TestContext.Current.CancellationToken), written.ToString());
    }

    [Fact]
    public async Task To_silence_comes_first_the_rule_that_speaks_of_the_line_below()
    {
        using var library = Sample.Library();
        await using var client = await EditorClient.StartAsync(library.Path);
        var document = EditorDocument.Open(client, EditorClient.UriOf(library["fan/motor.proc"]), Sample.Job.Replace("    unplug motor_plug\n", "", StringComparison.Ordinal));
        var code = Assert.Single(await document.DiagnosticsAsync(), one => one!["code"]!.GetValue<string>().StartsWith("PRC3", StringComparison.Ordinal))!["code"]!.GetValue<string>();

        document.Replace("    remove motor\n", "    // proc: allow \n    remove motor\n");
        var answer = await client.RequestAsync("textDocument/completion", document.At("// proc: allow "));

        Assert.Equal(code, answer!["items"]!.AsArray().MinBy(item => item!["sortText"]!.GetValue<string>(), StringComparer.Ordinal)!["label"]!.GetValue<string>());
    }

    private static async Task<List<string>> OfferedAsync(EditorClient client, TemporaryLibrary library, string heading, string typed)
    {
        var (path, text, before) = heading switch
        {
            "file" => ("fan/other.proc", "use \"machine.proc\"\n\nprocedure other \"Other\" on fan { goal inspect motor  work { inspect motor } }\n", "use \"machine.proc\"\n"),
            "machine" => ("fan/machine.proc", Sample.RichMachine, "  // here in the machine\n"),
            "part" => ("fan/machine.proc", Sample.RichMachine, "    // here in the part\n"),
            "procedure" => ("fan/motor.proc", Sample.Job, "  goal replace motor\n"),
            "stage" => ("fan/motor.proc", Sample.Job, "    undo rest of guard_bolts\n    remove guard\n"),
            "work" => ("fan/motor.proc", Sample.Job.Replace("work { replace motor }", "work {\n    replace motor\n  }", StringComparison.Ordinal), "    replace motor\n"),
            _ => throw new InvalidOperationException($"No place is called '{heading}'."),
        };
        var at = text.IndexOf(before, StringComparison.Ordinal) + before.Length;
        var bar = typed.IndexOf('|', StringComparison.Ordinal);
        Assert.True(at >= before.Length && bar >= 0, $"{heading}: {typed}");
        var document = EditorDocument.Open(client, EditorClient.UriOf(library[path]), text.Insert(at, typed.Remove(bar, 1) + "\n"));
        var answer = await client.RequestAsync("textDocument/completion", new JsonObject { ["textDocument"] = document.Identifier, ["position"] = document.Position(at + bar) });
        document.Close();
        return
        [
            .. answer!["items"]!.AsArray()
                .OrderBy(item => item!["sortText"]!.GetValue<string>(), StringComparer.Ordinal)
                .Select(item => $"{item!["label"]}{(item["detail"]?.GetValue<string>() is { } detail && detail.StartsWith("not yet", StringComparison.Ordinal) ? $" ({detail})" : "")}"),
        ];
    }
}
