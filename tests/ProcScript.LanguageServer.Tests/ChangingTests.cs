using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

public sealed class ChangingTests : IClassFixture<ServedSample>
{
    private const int RequestFailed = -32803;

    private readonly TemporaryLibrary _library;
    private readonly EditorClient _client;
    private readonly EditorDocument _job;

    public ChangingTests(ServedSample sample)
    {
        (_library, _client, _job) = (sample.Library, sample.Client, sample.Job);
        _job.Set(Sample.Job);
    }

    [Fact]
    public async Task A_joint_is_renamed_where_it_is_declared_and_wherever_it_is_named()
    {
        var prepared = await _client.RequestAsync("textDocument/prepareRename", _job.At("undo hub_"));
        var changes = (await RenameAsync("undo hub_", "hub_nut"))["changes"]!.AsObject();

        Assert.Equal("hub_bolt", prepared!["placeholder"]!.GetValue<string>());
        Assert.Equal(["machine.proc", "motor.proc"], changes.Select(file => file.Key.Split('/')[^1]).Order(StringComparer.Ordinal));
        Assert.All(changes, file => Assert.Equal("hub_nut", Assert.Single(file.Value!.AsArray())!["newText"]!.GetValue<string>()));
        Assert.Null(await _client.RequestAsync("textDocument/prepareRename", _job.At("stage")));
    }

    [Theory]
    [InlineData("undo hub_", "motor", "is taken")]
    [InlineData("undo hub_", "undo", "cannot be a name")]
    [InlineData("undo hub_", "two words", "cannot be a name")]
    [InlineData("on fa", "m8x25", "is taken")]
    public async Task A_rename_that_would_clash_is_refused_with_a_reason(string mark, string name, string reason)
    {
        var parameters = _job.At(mark);
        parameters["newName"] = name;

        var answer = await _client.AnswerAsync("textDocument/rename", parameters);

        Assert.Equal(RequestFailed, answer["error"]!["code"]!.GetValue<int>());
        Assert.Contains(reason, answer["error"]!["message"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_variable_is_renamed_in_its_block_its_indices_and_its_texts()
    {
        const string text = "machine m { each side in left, right { part door[side] \"{side} door\" { } } each side in a, b { part lid[side] } }";
        var document = EditorDocument.Open(_client, EditorClient.UriOf(_library["doors.proc"]), text);
        var parameters = document.At("each si");
        parameters["newName"] = "hand";

        var edits = (await _client.RequestAsync("textDocument/rename", parameters))!["changes"]![document.Uri]!.AsArray();

        Assert.Equal([text.IndexOf("side", StringComparison.Ordinal), text.IndexOf("side]", StringComparison.Ordinal), text.IndexOf("side}", StringComparison.Ordinal)],
            edits.Select(edit => document.OffsetOf(edit!["range"]!["start"]!)));
    }

    [Fact]
    public async Task Renaming_a_file_or_a_folder_mends_the_use_lines_that_lead_there_and_out()
    {
        async Task<string[]> AskAsync(string from, string to)
        {
            var answer = await _client.RequestAsync("workspace/willRenameFiles", new JsonObject
            {
                ["files"] = new JsonArray(new JsonObject { ["oldUri"] = EditorClient.UriOf(_library[from]), ["newUri"] = EditorClient.UriOf(_library[to]) }),
            });
            return [.. answer!["changes"]!.AsObject().SelectMany(file => file.Value!.AsArray().Select(edit => $"{file.Key.Split('/')[^1]}: {edit!["newText"]}"))];
        }

        Assert.Equal(["machine.proc: \"../parts/metric.proc\""], await AskAsync("catalog.proc", "parts/metric.proc"));
        Assert.Equal(["machine.proc: \"catalog.proc\"", "motor.proc: \"../machine.proc\""], await AskAsync("fan/machine.proc", "machine.proc"));
        Assert.Equal(["machine.proc: \"../../catalog.proc\""], await AskAsync("fan", "fans/tollard"));
    }

    [Fact]
    public async Task A_finding_brings_its_cure_as_an_edit_that_mends_it()
    {
        _job.Replace("    undo hub_bolt\n", "");
        var finding = Assert.Single(await _job.DiagnosticsAsync())!;
        var parameters = new JsonObject
        {
            ["textDocument"] = _job.Identifier,
            ["range"] = finding["range"]!.DeepClone(),
            ["context"] = new JsonObject { ["diagnostics"] = new JsonArray(finding.DeepClone()), ["only"] = new JsonArray("quickfix") },
        };

        var action = (await _client.RequestAsync("textDocument/codeAction", parameters))![0]!;
        var edit = action["edit"]!["changes"]![_job.Uri]![0]!;
        var start = _job.OffsetOf(edit["range"]!["start"]!);
        _job.Edit(start, _job.OffsetOf(edit["range"]!["end"]!) - start, edit["newText"]!.GetValue<string>());

        Assert.Contains("undo hub_bolt", action["title"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Equal("PRC3001", action["diagnostics"]![0]!["code"]!.GetValue<string>());
        Assert.Empty(await _job.DiagnosticsAsync());
    }

    [Fact]
    public async Task A_document_is_laid_out_unless_its_text_has_an_error()
    {
        _job.Replace("    isolate mains", "  isolate   mains");
        var edits = (await _client.RequestAsync("textDocument/formatting", Formatting()))!.AsArray();
        _job.Apply(edits);

        Assert.Equal(Sample.Job, _job.Text);
        _job.Replace("stage \"Guard\" {", "stage \"Guard\"");
        // An editor that lays out at every save would say at every save that it failed.
        Assert.Empty((await _client.RequestAsync("textDocument/formatting", Formatting()))!.AsArray());
    }

    [Fact]
    public async Task A_block_is_laid_out_once_it_is_closed_and_the_rest_stays()
    {
        _job.Replace("    isolate mains", "  isolate   mains");
        _job.Replace("work { replace motor }", "work {  replace motor }");
        var closed = _job.Text.IndexOf('}', _job.Text.IndexOf("work {", StringComparison.Ordinal)) + 1;
        var parameters = Formatting();
        parameters["position"] = _job.RangeOf(closed, 0)["start"]!.DeepClone();
        parameters["ch"] = "}";

        var edits = (await _client.RequestAsync("textDocument/onTypeFormatting", parameters))!.AsArray();
        _job.Apply(edits);

        Assert.Equal(Sample.Job.Replace("    isolate mains", "  isolate   mains", StringComparison.Ordinal), _job.Text);
    }

    [Fact]
    public async Task A_name_is_changed_with_its_uses_where_all_of_them_are_in_one_file()
    {
        _job.Set(Sample.Job + "\nprocedure twice \"Twice\" on fan { do own }\nprocedure own \"Own\" on fan { work { inspect motor } }\n");

        var own = await _client.RequestAsync("textDocument/linkedEditingRange", _job.At("procedure ow"));
        var motor = await _client.RequestAsync("textDocument/linkedEditingRange", _job.At("inspect mot"));

        Assert.Equal(["own", "own"], own!["ranges"]!.AsArray().Select(range => _job.Slice(range!)));
        Assert.Null(motor);
    }

    [Fact]
    public async Task A_stretch_is_laid_out_and_the_rest_stays()
    {
        _job.Replace("    isolate mains", "  isolate   mains");
        _job.Replace("    undo hub_bolt", " undo   hub_bolt");
        var parameters = Formatting();
        parameters["range"] = _job.RangeOf(_job.Text.IndexOf("  isolate   mains", StringComparison.Ordinal), "  isolate   mains".Length);

        var edits = (await _client.RequestAsync("textDocument/rangeFormatting", parameters))!.AsArray();
        _job.Apply(edits);

        Assert.Equal(Sample.Job.Replace("    undo hub_bolt", " undo   hub_bolt", StringComparison.Ordinal), _job.Text);
    }

    private JsonObject Formatting() => new() { ["textDocument"] = _job.Identifier, ["options"] = new JsonObject { ["tabSize"] = 2, ["insertSpaces"] = true } };

    private async Task<JsonNode> RenameAsync(string mark, string name)
    {
        var parameters = _job.At(mark);
        parameters["newName"] = name;
        return (await _client.RequestAsync("textDocument/rename", parameters))!;
    }
}
