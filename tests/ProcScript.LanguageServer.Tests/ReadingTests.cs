using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

/// <summary>What helps while one reads: hints within lines, colours by meaning, who calls whom, what a call takes.</summary>
public sealed class ReadingTests : IClassFixture<ServedSample>
{
    private const string Caller =
        """
        use "motor.proc"
        procedure guard_off(side in left, right, hand in a, b) "Guard off" on fan {
          goal remove guard
          do motor_new
        }
        procedure again "Again" on fan { goal remove guard  do guard_off(left, a) }

        """;

    private readonly EditorClient _client;
    private readonly EditorDocument _job;
    private readonly EditorDocument _machine;
    private readonly EditorDocument _caller;

    public ReadingTests(ServedSample sample)
    {
        (_client, _job, _machine) = (sample.Client, sample.Job, sample.Machine);
        _job.Set(Sample.Job);
        _caller = EditorDocument.Open(_client, EditorClient.UriOf(sample.Library["fan/caller.proc"]), Caller);
    }

    [Fact]
    public async Task Hints_tell_what_is_left_the_refit_step_and_the_other_unit()
    {
        var hints = await HintsAsync(_job);
        var inCatalog = EditorDocument.Open(_client, _machine.Uri.Replace("fan/machine", "catalog", StringComparison.Ordinal), Sample.Catalog);

        Assert.Equal("2 left, refit 20", hints["undo 2 of guard_bolts"]);
        Assert.Equal("refit 19", hints["undo rest of guard_bolts"]);
        Assert.Equal("refit 12", hints["remove motor"]);
        Assert.Contains("16.2 ± 1.5 lbf·ft", (await HintsAsync(inCatalog)).Values);
        inCatalog.Close();
    }

    [Fact]
    public async Task A_name_is_marked_by_what_it_means()
    {
        var data = (await _client.RequestAsync("textDocument/semanticTokens/full", new JsonObject { ["textDocument"] = _job.Identifier }))!["data"]!.AsArray().Select(one => one!.GetValue<int>()).ToArray();
        var types = _client.Capabilities["semanticTokensProvider"]!["legend"]!["tokenTypes"]!.AsArray().Select(one => one!.GetValue<string>()).ToArray();
        var marked = new List<(string Text, string Type)>();
        var (line, character) = (0, 0);
        foreach (var token in data.Chunk(5))
        {
            (line, character) = token[0] == 0 ? (line, character + token[1]) : (line + token[0], token[1]);
            marked.Add((_job.Text.Split('\n')[line].Substring(character, token[2]), types[token[3]]));
        }

        Assert.Contains(("motor_new", "function"), marked);
        Assert.Contains(("fan", "class"), marked);
        Assert.Contains(("mains", "event"), marked);
        Assert.Contains(("guard_bolts", "variable"), marked);
        Assert.Contains(("motor", "property"), marked);
    }

    [Fact]
    public async Task Calls_are_followed_both_ways()
    {
        var item = (await _client.RequestAsync("textDocument/prepareCallHierarchy", _caller.At("procedure guard_")))![0]!;
        var incoming = (await _client.RequestAsync("callHierarchy/incomingCalls", new JsonObject { ["item"] = item.DeepClone() }))!.AsArray();
        var outgoing = (await _client.RequestAsync("callHierarchy/outgoingCalls", new JsonObject { ["item"] = item.DeepClone() }))!.AsArray();

        Assert.Equal("again", Assert.Single(incoming)!["from"]!["name"]!.GetValue<string>());
        Assert.Equal("guard_off", _caller.Slice(incoming[0]!["fromRanges"]![0]!));
        Assert.Equal("motor_new", Assert.Single(outgoing)!["to"]!["name"]!.GetValue<string>());
        Assert.Equal(_job.Uri, outgoing[0]!["to"]!["uri"]!.GetValue<string>());
        Assert.Null(await _client.RequestAsync("textDocument/prepareCallHierarchy", _caller.At("remove gua")));
    }

    [Theory]
    [InlineData("do guard_off(", 0)]
    [InlineData("do guard_off(left, ", 1)]
    public async Task A_call_tells_what_it_takes(string typed, int active)
    {
        var help = await _client.RequestAsync("textDocument/signatureHelp", _caller.At(typed));

        Assert.Equal("guard_off(side in left, right, hand in a, b)", help!["signatures"]![0]!["label"]!.GetValue<string>());
        Assert.Equal(active, help["activeParameter"]!.GetValue<int>());
        Assert.Equal("hand in a, b", help["signatures"]![0]!["parameters"]![1]!["label"]!.GetValue<string>());
    }

    private async Task<Dictionary<string, string>> HintsAsync(EditorDocument document)
    {
        var hints = (await _client.RequestAsync("textDocument/inlayHint", new JsonObject { ["textDocument"] = document.Identifier, ["range"] = document.RangeOf(0, document.Text.Length) }))!.AsArray();
        return hints.ToDictionary(hint => Before(document, hint!["position"]!), hint => hint!["label"]!.GetValue<string>());
    }

    private static string Before(EditorDocument document, JsonNode position)
    {
        var offset = document.OffsetOf(position);
        return document.Text[(document.Text.LastIndexOf('\n', offset - 1) + 1)..offset].Trim();
    }
}
