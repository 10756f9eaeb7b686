using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

/// <summary>From the texts to the steps of a job and back, as the panel of an editor asks for it.</summary>
public sealed class PlaceTests : IClassFixture<ServedSample>
{
    private const string Called =
        """
        use "machine.proc"

        procedure guard_off "Take the guard off" on fan {
          goal remove guard
          stage "Guard" {
            isolate mains
            release guard_caps
            notice "Two hands."
            undo guard_bolts
            remove guard
          }
          refit { snug guard_bolts }
        }
        """;

    private const string Calling =
        """
        use "guard.proc"

        procedure wheel_new "Replace the wheel" on fan {
          goal replace wheel
          do guard_off
          stage "Wheel" {
            undo hub_bolt
            remove wheel
          }
          work { replace wheel }
          refit {
            check "It turns." before fit guard
          }
        }
        """;

    private readonly ServedSample _sample;

    public PlaceTests(ServedSample sample)
    {
        _sample = sample;
        sample.Job.Set(Sample.Job);
    }

    [Fact]
    public async Task A_line_of_the_strip_means_the_steps_of_strip_and_refit()
    {
        var (plan, places) = await ViewsAsync(_sample.Job);

        var steps = StepsAt(places, "motor.proc", LineOf(Sample.Job, "undo rest of guard_bolts"));

        Assert.Equal(["Undo 2 × M8 × 25 bolt", "Fasten 2 × M8 × 25 bolt"], steps.Select(step => TextOf(plan, step)));
    }

    [Theory]
    [InlineData("stage \"Motor\"", "Undo 1 × M8 × 25 bolt", 10)]
    [InlineData("refit {", "Check: It runs free.", 2)]
    [InlineData("goal replace motor", "Replace the motor", 1)]
    public async Task What_holds_steps_means_all_of_them(string line, string first, int count)
    {
        var (plan, places) = await ViewsAsync(_sample.Job);

        var steps = StepsAt(places, "motor.proc", LineOf(Sample.Job, line));

        Assert.Equal(first, TextOf(plan, steps[0]));
        Assert.Equal(count, steps.Length);
    }

    [Fact]
    public async Task The_head_of_the_procedure_means_no_step_and_another_procedure_nothing()
    {
        var (_, places) = await ViewsAsync(_sample.Job);

        Assert.Empty(StepsAt(places, "motor.proc", LineOf(Sample.Job, "procedure motor_new")));
        Assert.Null(StretchAt(places, "motor.proc", 0));
    }

    [Fact]
    public async Task A_declaration_of_the_machine_and_a_kind_mean_what_is_done_to_them()
    {
        var (plan, places) = await ViewsAsync(_sample.Job);

        string[] TextsAt(string file, string text, string line) => [.. StepsAt(places, file, LineOf(text, line)).Select(step => TextOf(plan, step))];

        Assert.Equal(["Remove the front guard", "Fit the front guard"], TextsAt("machine.proc", Sample.Machine, "part guard"));
        Assert.Equal(["Release 4 × snap cap", "Engage 4 × snap cap"], TextsAt("machine.proc", Sample.Machine, "covered by 4 snap_cap"));
        Assert.Equal(["Isolate the 24 V supply", "Restore the 24 V supply"], TextsAt("machine.proc", Sample.Machine, "energy mains"));
        Assert.Equal(TextsAt("machine.proc", Sample.Machine, "wired by 1 two_way"), TextsAt("catalog.proc", Sample.Catalog, "connector two_way"));
    }

    [Fact]
    public async Task A_do_line_means_what_the_procedure_brings_in_and_each_of_its_steps_knows_the_do_line()
    {
        var called = EditorDocument.Open(_sample.Client, EditorClient.UriOf(_sample.Library["fan/guard.proc"]), Called);
        var calling = EditorDocument.Open(_sample.Client, EditorClient.UriOf(_sample.Library["fan/wheel.proc"]), Calling);
        var (plan, places) = await ViewsAsync(calling);

        var done = StepsAt(places, "wheel.proc", LineOf(Calling, "do guard_off"));
        var undone = StepsAt(places, "guard.proc", LineOf(Called, "undo guard_bolts"));
        var own = places["steps"]!.AsArray().Single(step => step!["number"]!.GetValue<int>() == undone[0])!;

        Assert.Equal("Isolate the 24 V supply", TextOf(plan, done[0]));
        Assert.Equal(["Undo 4 × M8 × 25 bolt", "Run in 4 × M8 × 25 bolt, finger-tight", "Tighten 4 × M8 × 25 bolt"], undone.Select(step => TextOf(plan, step)));
        Assert.Equal(undone, StepsAt(places, "guard.proc", LineOf(Called, "notice")).Order());
        Assert.Equal(done, StepsAt(places, "guard.proc", LineOf(Called, "procedure guard_off")));
        Assert.Superset(undone[1..].ToHashSet(), StepsAt(places, "guard.proc", LineOf(Called, "snug guard_bolts")).ToHashSet());
        Assert.EndsWith("guard.proc", own["written"]!["uri"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Equal(LineOf(Called, "undo guard_bolts"), own["written"]!["range"]!["start"]!["line"]!.GetValue<int>());
        Assert.Equal(LineOf(Calling, "do guard_off"), Assert.Single(own["calls"]!.AsArray())!["range"]!["start"]!["line"]!.GetValue<int>());
        Assert.All(
            places["steps"]!.AsArray().Where(step => !done.Contains(step!["number"]!.GetValue<int>())),
            step => Assert.Empty(step!["calls"]!.AsArray()));
        calling.Close();
        called.Close();
    }

    [Fact]
    public async Task The_refit_leads_to_the_lines_that_it_comes_from()
    {
        var view = await RequestAsync("procscript.view.refit", _sample.Job);

        var line = view.Split('\n').Single(line => line.Contains("Fasten 4 × M8 × 25 bolt", StringComparison.Ordinal) && line.Contains("motor.proc", StringComparison.Ordinal));

        var from = LineOf(Sample.Job, "undo motor_bolts") + 1;
        Assert.Matches($@"; reverses step \d+; from bag \d+; \[fan/motor\.proc:{from}\]\(file:///\S+/fan/motor\.proc#L{from}\)$", line);
    }

    private static int LineOf(string text, string line) => text.Split('\n').ToList().FindIndex(one => one.Contains(line, StringComparison.Ordinal));

    private static int[] StepsAt(JsonObject places, string file, int line) =>
        [.. StretchAt(places, file, line)!["steps"]!.AsArray().Select(step => step!.GetValue<int>())];

    /// <summary>The shortest stretch on a line, and of several as short the first.</summary>
    private static JsonNode? StretchAt(JsonObject places, string file, int line) => places["stretches"]!.AsArray()
        .Where(stretch => stretch!["uri"]!.GetValue<string>().EndsWith(file, StringComparison.Ordinal)
            && stretch["range"]!["start"]!["line"]!.GetValue<int>() <= line
            && stretch["range"]!["end"]!["line"]!.GetValue<int>() >= line)
        .MinBy(stretch => stretch!["range"]!["end"]!["line"]!.GetValue<int>() - stretch["range"]!["start"]!["line"]!.GetValue<int>());

    private static string TextOf(JsonObject plan, int number) => plan["strip"]!.AsArray().Append(plan["work"]).Concat(plan["refit"]!.AsArray())
        .SelectMany(card => card!["steps"]!.AsArray())
        .Single(step => step!["number"]!.GetValue<int>() == number)!["text"]!.GetValue<string>();

    private async Task<(JsonObject Plan, JsonObject Places)> ViewsAsync(EditorDocument document) =>
        (JsonNode.Parse(await RequestAsync("procscript.view.plan", document))!.AsObject(), JsonNode.Parse(await RequestAsync("procscript.view.places", document))!.AsObject());

    private async Task<string> RequestAsync(string command, EditorDocument document)
    {
        var view = await _sample.Client.RequestAsync("workspace/executeCommand", new JsonObject
        {
            ["command"] = command,
            ["arguments"] = new JsonArray(new JsonObject { ["uri"] = document.Uri }),
        });
        return await File.ReadAllTextAsync(new Uri(view!["uri"]!.GetValue<string>()).LocalPath, TestContext.Current.CancellationToken);
    }
}
