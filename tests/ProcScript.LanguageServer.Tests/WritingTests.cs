using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

/// <summary>What helps while one writes: hover and completion, which know the machine as the step at hand finds it.</summary>
public sealed class WritingTests : IClassFixture<ServedSample>
{
    private readonly EditorClient _client;
    private readonly EditorDocument _job;
    private readonly EditorDocument _machine;

    public WritingTests(ServedSample sample)
    {
        (_client, _job, _machine) = (sample.Client, sample.Job, sample.Machine);
        _job.Set(Sample.Job);
        _machine.Set(Sample.Machine);
    }

    [Theory]
    [InlineData("undo 2 of guard_b", "4 of 4 attached")]
    [InlineData("undo rest of guard_b", "2 of 4 attached")]
    [InlineData("remove whe", "in place")]
    [InlineData("work { replace mot", "out")]
    [InlineData("isolate mai", "live")]
    public async Task Hover_tells_what_an_item_is_like_at_this_line(string mark, string state)
    {
        var told = await HoverAsync(_job.At(mark));

        Assert.Contains($"Before this step: {state}", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hover_tells_what_holds_and_hides_an_item_and_what_is_missing()
    {
        var motor = await HoverAsync(_machine.At("part mot"));
        _job.Replace("    remove wheel\n", "");
        var blocked = await HoverAsync(_job.At("undo motor_b"));
        var kind = await HoverAsync(_machine.At("held by 4 m8x"));

        Assert.Contains("Held by: `motor_bolts`, `motor_plug`", motor, StringComparison.Ordinal);
        Assert.Contains("Hidden behind: `wheel`", motor, StringComparison.Ordinal);
        Assert.Contains("Not yet within reach: the fan wheel is not out of the way", blocked, StringComparison.Ordinal);
        Assert.Contains("22 ± 2 N·m", kind, StringComparison.Ordinal);
        Assert.Contains("Isolate: Pull the plug.\n\nVerify: Press the switch: the fan stays still.", await HoverAsync(_job.At("isolate mai")), StringComparison.Ordinal);
        Assert.Null(await _client.RequestAsync("textDocument/hover", _job.At("stage \"Gu")));
    }

    [Theory]
    [InlineData(new[] { "guard_bolts" }, "undo ", "    isolate mains\n    release guard_caps\n")]
    [InlineData(new[] { "guard_caps" }, "release ", "    isolate mains\n")]
    [InlineData(new[] { "hub_bolt" }, "undo ", "    isolate mains\n    release guard_caps\n    undo guard_bolts\n    remove guard\n")]
    [InlineData(new[] { "guard" }, "remove ", "    release guard_caps\n    undo guard_bolts\n")]
    [InlineData(new[] { "mains" }, "isolate ", "")]
    [InlineData(new[] { "speed" }, "set ", "")]
    [InlineData(new[] { "low", "high" }, "set speed to ", "")]
    public async Task After_a_verb_comes_first_what_can_be_done_there(string[] expected, string sentence, string before)
    {
        _job.Set($"use \"machine.proc\"\nprocedure p on fan {{\n  goal remove motor\n  stage \"A\" {{\n{before}    {sentence}\n  }}\n}}\n");

        Assert.Equal(expected, (await LabelsAsync(_job, sentence + "\n  }\n}", sentence.Length)).Take(expected.Length));
    }

    [Theory]
    [InlineData("remove ", new[] { "lid", "hood" })]
    [InlineData("undo ", new[] { "hood_bolts" })]
    [InlineData("replace ", new[] { "hood_bolts", "lid", "lid_bolts", "hood" })]
    public async Task What_the_steps_name_and_the_machine_lacks_is_offered_again(string sentence, string[] expected)
    {
        _job.Set($"machine tank \"Tank\" {{ }}\nprocedure p on tank {{\n  goal replace hood\n  stage \"A\" {{\n    undo 4 m8x25 lid_bolts\n    aside lid\n    loosen hood_bolts\n    {sentence}\n  }}\n}}\n");

        var labels = await LabelsAsync(_job, sentence + "\n  }\n}", sentence.Length);

        Assert.Equal(expected, labels.Where(label => label.StartsWith("lid", StringComparison.Ordinal) || label.StartsWith("hood", StringComparison.Ordinal)).Take(expected.Length));
    }

    [Theory]
    [InlineData("held by 4 ", new[] { "m8x25", "snap_cap" })]
    [InlineData("wired by 1 ", new[] { "two_way" })]
    [InlineData("wired by 1 two_way as plug_2 on ", new[] { "mains", "none" })]
    [InlineData("behind ", new[] { "guard", "wheel" })]
    public async Task In_a_machine_the_sort_of_name_fits_the_clause(string typed, string[] expected)
    {
        _machine.Replace("mass 4 kg\n", $"mass 4 kg\n    {typed}\n");

        Assert.Equal(expected, (await LabelsAsync(_machine, "    " + typed)).Take(expected.Length));
    }

    [Fact]
    public async Task An_alert_that_stands_one_way_only_is_offered_where_things_have_two()
    {
        string[] signals = ["danger", "warning", "caution", "notice"];

        Assert.Superset(signals.Select(word => $"strip {word}").ToHashSet(), (await LabelsAsync(_job, "    isolate mains", 4)).ToHashSet());
        Assert.DoesNotContain("strip danger", await LabelsAsync(_job, "goal replace motor\n  "));
        foreach (var way in new[] { "strip ", "refit " })
        {
            _job.Set($"use \"machine.proc\"\nprocedure p on fan {{\n  goal remove motor\n  stage \"A\" {{\n    {way}\n  }}\n}}\n");
            Assert.Superset(signals.ToHashSet(), (await LabelsAsync(_job, way + "\n  }\n}", way.Length)).ToHashSet());
        }

        _machine.Replace("mass 4 kg\n", "mass 4 kg\n    refit \n");
        Assert.Superset(signals.ToHashSet(), (await LabelsAsync(_machine, "    refit ")).ToHashSet());
    }

    [Fact]
    public async Task A_sentence_begins_with_the_words_of_its_block()
    {
        Assert.Contains("stage", await LabelsAsync(_job, "goal replace motor\n  "));
        var inStage = await LabelsAsync(_job, "isolate mains\n    ");
        Assert.Contains("undo", inStage);
        Assert.DoesNotContain("fasten", inStage);
        Assert.Contains("fasten", await LabelsAsync(_job, "refit { "));
        Assert.Contains("held", await LabelsAsync(_machine, "mass 4 kg\n    "));
        Assert.Empty(await LabelsAsync(_job, "\"Replace the"));
    }

    [Theory]
    [InlineData("use \"", "use \"")]
    [InlineData("use \"../ca", "use \"../ca")]
    [InlineData("use \"../ca\"", "use \"../ca")]
    public async Task Within_a_use_come_the_files_of_the_library(string line, string typed)
    {
        _job.Set($"use \"machine.proc\"\n{line}\n");

        var at = _job.Text.LastIndexOf(line, StringComparison.Ordinal) + typed.Length;
        var parameters = new JsonObject { ["textDocument"] = _job.Identifier, ["position"] = _job.Position(at) };
        var item = Assert.Single((await _client.RequestAsync("textDocument/completion", parameters))!["items"]!.AsArray())!;
        var edit = item["textEdit"]!;
        var start = _job.OffsetOf(edit["range"]!["start"]!);
        _job.Edit(start, _job.OffsetOf(edit["range"]!["end"]!) - start, edit["newText"]!.GetValue<string>());

        Assert.Equal("../catalog.proc", item["label"]!.GetValue<string>());
        Assert.Equal($"use \"machine.proc\"\nuse \"../catalog.proc{(line.EndsWith("ca\"", StringComparison.Ordinal) ? "\"" : "")}\n", _job.Text);
    }

    [Fact]
    public async Task A_file_that_uses_this_one_is_not_among_them()
    {
        _machine.Replace("use \"../catalog.proc\"", "use \"\"");

        Assert.Equal(["../catalog.proc"], await LabelsAsync(_machine, "use \""));
    }

    [Fact]
    public async Task A_client_without_snippets_gets_none()
    {
        var items = (await _client.RequestAsync("textDocument/completion", _job.At("goal replace motor\n  ")))!["items"]!.AsArray();

        Assert.All(items, item => Assert.DoesNotContain("$", (item!["insertText"] ?? item["label"])!.GetValue<string>(), StringComparison.Ordinal));
        Assert.All(items, item => Assert.Null(item!["insertTextFormat"]));
    }

    private async Task<string> HoverAsync(JsonObject parameters) =>
        (await _client.RequestAsync("textDocument/hover", parameters))!["contents"]!["value"]!.GetValue<string>();

    private async Task<string[]> LabelsAsync(EditorDocument document, string mark, int? into = null) =>
        [.. (await _client.RequestAsync("textDocument/completion", document.At(mark, into)))!["items"]!.AsArray().Select(item => item!["label"]!.GetValue<string>())];
}
