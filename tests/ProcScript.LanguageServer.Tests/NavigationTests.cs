using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

public sealed class NavigationTests(ServedSample sample) : IClassFixture<ServedSample>
{
    private readonly TemporaryLibrary _library = sample.Library;
    private readonly EditorClient _client = sample.Client;
    private readonly EditorDocument _job = sample.Job;
    private readonly EditorDocument _machine = sample.Machine;

    [Theory]
    [InlineData("undo hub_", "hub_bolt", "fan/machine.proc")]
    [InlineData("on fa", "fan", "fan/machine.proc")]
    [InlineData("isolate main", "mains", "fan/machine.proc")]
    [InlineData("\"machine.p", "", "fan/machine.proc")]
    public async Task A_word_leads_to_what_declares_it(string mark, string declared, string path)
    {
        var found = Assert.Single((await _client.RequestAsync("textDocument/definition", _job.At(mark)))!.AsArray())!;

        Assert.Equal(EditorClient.UriOf(_library[path]), found["uri"]!.GetValue<string>());
        Assert.Equal(declared, _machine.Slice(found["range"]!));
    }

    [Fact]
    public async Task A_kind_leads_to_the_catalog_and_a_reserved_word_nowhere()
    {
        var kind = Assert.Single((await _client.RequestAsync("textDocument/definition", _machine.At("held by 4 m8x")))!.AsArray())!;

        Assert.EndsWith("/catalog.proc", kind["uri"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Empty((await _client.RequestAsync("textDocument/definition", _job.At("sta", 1)))!.AsArray());
    }

    [Fact]
    public async Task References_come_from_all_files_with_or_without_the_declaration()
    {
        async Task<int> CountAsync(bool withDeclaration)
        {
            var parameters = _job.At("undo hub_");
            parameters["context"] = new JsonObject { ["includeDeclaration"] = withDeclaration };
            return (await _client.RequestAsync("textDocument/references", parameters))!.AsArray().Count;
        }

        Assert.Equal(2, await CountAsync(true));
        Assert.Equal(1, await CountAsync(false));
    }

    [Fact]
    public async Task The_same_name_is_lit_up_in_the_document()
    {
        var lit = (await _client.RequestAsync("textDocument/documentHighlight", _job.At("undo 2 of guard_b")))!.AsArray();

        Assert.Equal(["guard_bolts", "guard_bolts"], lit.Select(one => _job.Slice(one!["range"]!)));
    }

    [Fact]
    public async Task A_use_line_is_a_link()
    {
        var link = Assert.Single((await _client.RequestAsync("textDocument/documentLink", new JsonObject { ["textDocument"] = _job.Identifier }))!.AsArray())!;

        Assert.Equal("\"machine.proc\"", _job.Slice(link["range"]!));
        Assert.Equal(_machine.Uri, link["target"]!.GetValue<string>());
    }

    [Fact]
    public async Task The_outline_shows_stages_and_parts_with_what_is_in_them()
    {
        var outline = (await _client.RequestAsync("textDocument/documentSymbol", new JsonObject { ["textDocument"] = _job.Identifier }))!.AsArray();
        var parts = (await _client.RequestAsync("textDocument/documentSymbol", new JsonObject { ["textDocument"] = _machine.Identifier }))!.AsArray();

        Assert.Equal(["Guard", "Motor", "work", "refit"], Assert.Single(outline)!["children"]!.AsArray().Select(one => one!["name"]!.GetValue<string>()));
        var guard = Assert.Single(parts)!["children"]!.AsArray().Single(one => one!["name"]!.GetValue<string>() == "guard")!;
        Assert.Equal("guard_caps", guard["children"]![0]!["children"]![0]!["name"]!.GetValue<string>());
        Assert.Equal("guard", _machine.Slice(guard["selectionRange"]!));
    }

    [Fact]
    public async Task A_client_that_knows_no_symbols_within_symbols_gets_a_list_that_says_what_each_lies_in()
    {
        using var library = Sample.Library();
        await using var client = await EditorClient.StartAsync(library.Path, new JsonObject());
        var machine = EditorDocument.Open(client, EditorClient.UriOf(library["fan/machine.proc"]), Sample.Machine);

        var outline = (await client.RequestAsync("textDocument/documentSymbol", new JsonObject { ["textDocument"] = machine.Identifier }))!.AsArray();

        var caps = outline.Single(one => one!["name"]!.GetValue<string>() == "guard_caps")!;
        Assert.Equal("guard_bolts", caps["containerName"]!.GetValue<string>());
        Assert.Equal(machine.Uri, caps["location"]!["uri"]!.GetValue<string>());
        Assert.Null(caps["children"]);
    }

    [Fact]
    public async Task A_test_stands_in_the_outline_below_the_refit_and_folds()
    {
        _job.Replace("refit { check", "refit {\n    test \"Runs.\" before fit guard {\n      power mains\n      check \"It turns.\"\n    }\n    check");
        var outline = (await _client.RequestAsync("textDocument/documentSymbol", new JsonObject { ["textDocument"] = _job.Identifier }))!.AsArray();
        var folds = (await _client.RequestAsync("textDocument/foldingRange", new JsonObject { ["textDocument"] = _job.Identifier }))!.AsArray();

        var named = (await _client.RequestAsync("workspace/symbol", new JsonObject { ["query"] = "Runs." }))!.AsArray();
        _job.Set(Sample.Job);

        var test = Assert.Single(Assert.Single(outline)!["children"]!.AsArray().Single(one => one!["name"]!.GetValue<string>() == "refit")!["children"]!.AsArray())!;
        Assert.Equal("Runs.", test["name"]!.GetValue<string>());
        var first = test["range"]!["start"]!["line"]!.GetValue<int>();
        Assert.Contains((first, first + 2), folds.Select(fold => (fold!["startLine"]!.GetValue<int>(), fold["endLine"]!.GetValue<int>())));
        Assert.Empty(named);
    }

    [Fact]
    public async Task Names_and_titles_are_searched_in_all_files()
    {
        var found = (await _client.RequestAsync("workspace/symbol", new JsonObject { ["query"] = "MOTOR" }))!.AsArray();

        Assert.Equal(["motor", "motor_bolts", "motor_new", "motor_plug"], found.Select(one => one!["name"]!.GetValue<string>()).Order(StringComparer.Ordinal));
        var scattered = (await _client.RequestAsync("workspace/symbol", new JsonObject { ["query"] = "mtnw" }))!.AsArray();
        Assert.Equal("motor_new", Assert.Single(scattered)!["name"]!.GetValue<string>());
    }

    [Fact]
    public async Task Blocks_fold_and_a_selection_grows_from_the_word_to_the_file()
    {
        var folds = (await _client.RequestAsync("textDocument/foldingRange", new JsonObject { ["textDocument"] = _job.Identifier }))!.AsArray();
        var chain = (await _client.RequestAsync("textDocument/selectionRange", new JsonObject
        {
            ["textDocument"] = _job.Identifier,
            ["positions"] = new JsonArray(_job.At("undo hub_")["position"]!.DeepClone()),
        }))![0];

        Assert.Contains((5, 10), folds.Select(fold => (fold!["startLine"]!.GetValue<int>(), fold["endLine"]!.GetValue<int>())));
        var texts = new List<string>();
        for (; chain is not null; chain = chain["parent"])
        {
            texts.Add(_job.Slice(chain["range"]!));
        }

        Assert.Equal("hub_bolt", texts[0]);
        Assert.Equal("undo hub_bolt", texts[1]);
        Assert.Equal(_job.Text, texts[^1]);
        Assert.Equal(texts.OrderBy(text => text.Length), texts);
    }
}
