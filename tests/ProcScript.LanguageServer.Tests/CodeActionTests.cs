using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

/// <summary>The steps that a strip lacks, as edits that a client applies.</summary>
public sealed class CodeActionTests : IClassFixture<ServedSample>
{
    private readonly EditorClient _client;
    private readonly EditorDocument _job;

    public CodeActionTests(ServedSample sample)
    {
        (_client, _job) = (sample.Client, sample.Job);
        _job.Set(Sample.Job);
    }

    [Fact]
    public async Task A_finding_offers_the_missing_steps_and_they_mend_it()
    {
        _job.Replace("    release guard_caps\n    undo 2 of guard_bolts\n    undo rest of guard_bolts\n    remove guard\n  }\n", "  }\n");
        var finding = (await _job.DiagnosticsAsync())[0]!;
        Assert.Equal("PRC3002", finding["code"]!.GetValue<string>());

        var actions = await ActionsAsync(finding["range"]!.DeepClone(), "quickfix");
        var preferred = Assert.Single(actions, action => action!["isPreferred"]?.GetValue<bool>() == true)!;
        Apply(preferred);

        Assert.Equal("Add the missing steps `release guard_caps`, `undo guard_bolts`, `remove guard`", preferred["title"]!.GetValue<string>());
        Assert.Equal("quickfix", preferred["kind"]!.GetValue<string>());
        Assert.Equal("PRC3002", preferred["diagnostics"]![0]!["code"]!.GetValue<string>());
        Assert.Contains("    release guard_caps\n    undo guard_bolts\n    remove guard\n    undo hub_bolt\n", _job.Text, StringComparison.Ordinal);
        Assert.Empty(await _job.DiagnosticsAsync());
    }

    [Fact]
    public async Task What_no_machine_has_is_drafted_and_the_steps_bind()
    {
        _job.Set(
            """
            procedure lid_off "Take the lid off" on tank {
              goal remove lid
              stage "Lid" {
                undo 6 m8x25 lid_bolts
                remove lid
              }
            }

            """);
        var finding = Assert.Single(await _job.DiagnosticsAsync(), one => one!["code"]!.GetValue<string>() == "PRC1101")!;

        var action = Assert.Single(await ActionsAsync(finding["range"]!.DeepClone(), "quickfix"), one => one!["title"]!.GetValue<string>() == "Draft: declare what the steps name")!;
        Apply(action);

        Assert.Contains("  part lid \"lid\" { held by 6 m8x25 as lid_bolts }\n", _job.Text, StringComparison.Ordinal);
        Assert.Contains("    undo lid_bolts\n", _job.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(await _job.DiagnosticsAsync(), one => one!["code"]!.GetValue<string>().StartsWith("PRC1", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("    // draft: is it the left one?\n    remove motor\n", "    remove motor\n")]
    [InlineData("    remove motor  // draft: is it the left one?\n", "    remove motor\n")]
    public async Task A_question_that_is_answered_is_taken_out(string asked, string answered)
    {
        _job.Replace("    remove motor\n", asked);
        var finding = Assert.Single(await _job.DiagnosticsAsync(), one => one!["code"]!.GetValue<string>() == "PRC5097")!;

        Apply(Assert.Single(await ActionsAsync(finding["range"]!.DeepClone(), "quickfix"), one => one!["title"]!.GetValue<string>() == "Answered at the machine: take this question out")!);

        Assert.Equal(Sample.Job.Replace("    remove motor\n", answered, StringComparison.Ordinal), _job.Text);
    }

    [Fact]
    public async Task A_stage_offers_all_that_is_missing_in_it()
    {
        _job.Replace("    undo hub_bolt\n    remove wheel\n    unplug motor_plug\n    undo motor_bolts\n", "");
        Assert.NotEmpty(await _job.DiagnosticsAsync());
        var stage = _job.RangeOf(_job.Text.IndexOf("stage \"Motor\"", StringComparison.Ordinal), 0);

        Assert.Empty(await ActionsAsync(stage.DeepClone(), "quickfix"));
        Assert.Empty(await ActionsAsync(stage.DeepClone(), "source"));
        var action = Assert.Single(await ActionsAsync(stage.DeepClone(), "refactor"))!;
        Apply(action);

        Assert.Equal("Stage \"Motor\": add the missing steps `undo hub_bolt`, `remove wheel`, `undo motor_bolts`, `unplug motor_plug`", action["title"]!.GetValue<string>());
        Assert.Equal("refactor.rewrite", action["kind"]!.GetValue<string>());
        Assert.Empty(await _job.DiagnosticsAsync());
        Assert.Empty(await ActionsAsync(stage, "refactor"));
    }

    [Fact]
    public async Task The_head_of_a_procedure_offers_all_that_is_missing_in_it()
    {
        _job.Replace("    undo hub_bolt\n    remove wheel\n", "");
        _job.Replace("    undo 2 of guard_bolts\n    undo rest of guard_bolts\n", "");
        var head = _job.RangeOf(_job.Text.IndexOf("goal replace", StringComparison.Ordinal), 0);

        var action = Assert.Single(await ActionsAsync(head, "refactor"))!;
        Apply(action);

        Assert.Equal("Procedure: add the missing steps `undo guard_bolts`, `undo hub_bolt`, `remove wheel`", action["title"]!.GetValue<string>());
        Assert.Empty(await _job.DiagnosticsAsync());
    }

    [Fact]
    public async Task A_call_between_stages_offers_a_stage_with_what_it_lacks()
    {
        _job.Set(
            """
            use "machine.proc"
            procedure wheel_off "Take the wheel off" on fan {
              goal remove wheel
              stage "Wheel" { isolate mains  undo hub_bolt  remove wheel }
            }
            procedure outer "Outer" on fan {
              goal remove wheel
              do wheel_off
            }

            """);

        var call = _job.RangeOf(_job.Text.IndexOf("do wheel_off", StringComparison.Ordinal), 0);
        var action = Assert.Single(await ActionsAsync(call, "refactor"))!;
        Apply(action);

        Assert.Equal("`do wheel_off`: add the missing steps `release guard_caps`, `undo guard_bolts`, `remove guard`", action["title"]!.GetValue<string>());
        Assert.Contains(
            "  stage \"Before: Take the wheel off\" {\n    release guard_caps\n    undo guard_bolts\n    remove guard\n  }\n  do wheel_off\n", _job.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_finding_proposes_itself_is_offered_once_and_preferred_once_it_is_proven()
    {
        _job.Replace("    undo hub_bolt\n", "");
        var finding = Assert.Single(await _job.DiagnosticsAsync())!;

        var action = Assert.Single(await ActionsAsync(finding["range"]!.DeepClone(), "quickfix"))!;

        Assert.Equal("Insert `undo hub_bolt`", action["title"]!.GetValue<string>());
        Assert.True(action["isPreferred"]!.GetValue<bool>());
    }

    [Fact]
    public async Task Two_findings_that_ask_for_the_same_edit_offer_it_once()
    {
        _job.Set("machine rack \"rack\" {\n  part lid \"lid\" { held by 4 m8x25 as lid_bolts  held by 2 snap_cap as lid_caps }\n}\n");
        var findings = await _job.DiagnosticsAsync();
        var whole = _job.RangeOf(0, _job.Text.Length);

        var action = Assert.Single(await ActionsAsync(whole, "quickfix"), one => one!["title"]!.GetValue<string>() == "Add `use \"../catalog.proc\"`")!;

        Assert.Equal(2, findings.Count(finding => finding!["code"]!.GetValue<string>() == "PRC1101"));
        Assert.Equal(2, action["diagnostics"]!.AsArray().Count);
    }

    [Fact]
    public async Task Selected_steps_have_refactorings_of_the_kinds_of_the_protocol()
    {
        var start = _job.Text.IndexOf("isolate mains", StringComparison.Ordinal);
        var selection = _job.RangeOf(start, "isolate mains".Length);

        var extracts = await ActionsAsync(selection.DeepClone(), "refactor.extract");
        var action = Assert.Single(extracts)!;
        Apply(action);

        Assert.Equal("Make a stage of the steps: \"Make safe\"", action["title"]!.GetValue<string>());
        Assert.Equal("refactor.extract", action["kind"]!.GetValue<string>());
        Assert.Contains("  stage \"Make safe\" {\n    isolate mains\n  }\n  stage \"Guard\" {\n    release guard_caps\n", _job.Text, StringComparison.Ordinal);
        Assert.Empty(await _job.DiagnosticsAsync());
        Assert.Empty(await ActionsAsync(selection, "refactor.inline"));
    }

    [Fact]
    public async Task All_safe_fixes_of_a_document_are_one_source_action()
    {
        _job.Replace("    undo hub_bolt\n", "    undo hub_bolts\n");
        _job.Replace("    remove wheel\n", "    remove wheels\n");
        var head = _job.RangeOf(0, 0);

        var action = Assert.Single(await ActionsAsync(head.DeepClone(), "source.fixAll"))!;
        Apply(action);

        Assert.Equal("source.fixAll", action["kind"]!.GetValue<string>());
        Assert.Equal(Sample.Job, _job.Text);
        Assert.Empty(await _job.DiagnosticsAsync());
        Assert.Empty(await ActionsAsync(head, "source.fixAll"));
    }

    [Fact]
    public async Task All_findings_of_a_rule_are_one_quick_fix_more()
    {
        _job.Replace("    undo hub_bolt\n", "    undo hub_bolts\n");
        _job.Replace("    remove wheel\n", "    remove wheels\n");
        var place = _job.RangeOf(_job.Text.IndexOf("hub_bolts", StringComparison.Ordinal), 4);

        var action = Assert.Single(await ActionsAsync(place, "quickfix"), one => one!["title"]!.GetValue<string>() == "Fix all 2 findings of `unknown-name` in this file")!;
        Apply(action);

        Assert.Equal(Sample.Job, _job.Text);
    }

    [Fact]
    public async Task A_stage_moves_up_where_the_work_can_be_done_in_that_order()
    {
        _job.Replace("  stage \"Motor\"", "  stage \"Speed\" { set speed to high }\n  stage \"Motor\"");
        var place = _job.RangeOf(_job.Text.IndexOf("stage \"Speed\"", StringComparison.Ordinal), 0);
        var before = (await _job.DiagnosticsAsync()).Count;

        var action = Assert.Single(await ActionsAsync(place, "refactor.rewrite"), one => one!["title"]!.GetValue<string>() == "Move the stage \"Speed\" up")!;
        Apply(action);

        Assert.Contains("goal replace motor\n  stage \"Speed\" { set speed to high }\n  stage \"Guard\" {\n", _job.Text, StringComparison.Ordinal);
        Assert.Equal(before, (await _job.DiagnosticsAsync()).Count);
    }

    [Fact]
    public async Task A_part_offers_to_write_how_it_is_reached_and_what_is_written_is_clean()
    {
        _job.Set(
            """
            use "../catalog.proc"
            machine rack "rack" {
              part lid "lid" { held by 4 m8x25 as lid_bolts }
              part fuse "fuse" { behind lid  held by 1 snap_cap as fuse_clip }
            }

            """);
        var part = _job.RangeOf(_job.Text.IndexOf("fuse \"fuse\"", StringComparison.Ordinal), 0);

        var action = Assert.Single(await ActionsAsync(part, "refactor"), one => one!["title"]!.GetValue<string>() == "Write how to reach the fuse")!;
        Apply(action);

        Assert.Equal("refactor.rewrite", action["kind"]!.GetValue<string>());
        Assert.Contains("  goal remove fuse\n", _job.Text, StringComparison.Ordinal);
        Assert.Contains("    undo lid_bolts\n    remove lid\n", _job.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(await _job.DiagnosticsAsync(), one => one!["severity"]!.GetValue<int>() == 1);
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(2, false)]
    public async Task The_way_to_a_part_is_searched_for_who_asks_and_not_whenever_the_cursor_moves(int triggerKind, bool isOffered)
    {
        _job.Set("use \"../catalog.proc\"\nmachine rack \"rack\" { part fuse \"fuse\" { held by 1 snap_cap as fuse_clip } }\n");
        var part = _job.RangeOf(_job.Text.IndexOf("fuse \"fuse\"", StringComparison.Ordinal), 0);

        var actions = await ActionsAsync(part, "refactor", triggerKind);

        Assert.Equal(isOffered, actions.Any(one => one!["title"]!.GetValue<string>() == "Write how to reach the fuse"));
    }

    private async Task<JsonArray> ActionsAsync(JsonNode range, string kind, int triggerKind = 1) =>
        (await _client.RequestAsync("textDocument/codeAction", new JsonObject
        {
            ["textDocument"] = _job.Identifier,
            ["range"] = range,
            ["context"] = new JsonObject { ["diagnostics"] = new JsonArray(), ["only"] = new JsonArray(kind), ["triggerKind"] = triggerKind },
        }))!.AsArray();

    private void Apply(JsonNode action) => _job.Apply(action["edit"]!["changes"]![_job.Uri]!);
}
