using System.Text.Json;
using Json.Schema;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class CrewVerbTests : IDisposable
{
    private const string Hatch =
        """
        tool key "5 mm hex key"
        fastener bolt "bolt" { tool key  time 30 s }
        machine bunker "bunker" {
          part left "left lid" { mass 2 kg  held by 2 bolt as left_bolts }
          part right "right lid" { mass 2 kg  held by 2 bolt as right_bolts }
        }
        procedure lids_off "Take both lids off" on bunker {
          goal remove left
          stage "Lids" { undo left_bolts  remove left  undo right_bolts  remove right }
        }
        """;

    private readonly TemporaryFolder _disk = new();

    public CrewVerbTests() => _disk.With("hatch.proc", Hatch);

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task Who_does_what_is_told_with_what_a_second_person_saves()
    {
        var run = await CliRun.AtAsync(_disk.Path, "crew", ".");

        Assert.Equal(ExitCode.Clean, run.Code);
        Assert.Contains("  2 people       3:00  saves 3:00 (50 %)", run.Output, StringComparison.Ordinal);
        Assert.Contains("proved: no order is quicker with 2 people", run.Output, StringComparison.Ordinal);
        Assert.Contains("  side by side\n      0:00 to 3:00: A 1, 2, ", run.Output, StringComparison.Ordinal);
        Assert.Contains("wanted by two at once", run.Output, StringComparison.Ordinal);
        Assert.Equal(run, await CliRun.AtAsync(_disk.Path, "crew", "."));
    }

    [Fact]
    public async Task A_program_can_read_it()
    {
        var run = await CliRun.AtAsync(_disk.Path, "crew", ".", "--people", "3", "--format", "json");

        var schema = JsonSchema.FromFile(Path.Combine(Checkout.Root, "src", "ProcScript.Analysis", "crew.schema.json"));
        using var document = JsonDocument.Parse(run.Output);
        Assert.True(schema.Evaluate(document.RootElement).IsValid);
        Assert.Equal(3, document.RootElement.GetProperty("jobs")[0].GetProperty("people").GetArrayLength());
    }

    [Theory]
    [InlineData("--people", "0")]
    [InlineData("--people", "13")]
    [InlineData("--certified", "0")]
    [InlineData("--certified", "gas=")]
    [InlineData("--certified", "gas=0")]
    [InlineData("--certified", "gas=1=2")]
    [InlineData("--certified", "gas=1")]
    [InlineData("--time-limit", "0")]
    [InlineData("--time-limit", "3")]
    public async Task Numbers_that_make_no_crew_are_refused(string option, string value)
    {
        var run = await CliRun.AtAsync(_disk.Path, "crew", ".", option, value);

        Assert.Equal(ExitCode.Usage, run.AssertNoBug().Code);
        Assert.Contains(option, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_the_exact_planner_it_says_where_it_is_to_be_had()
    {
        var run = await CliRun.AtAsync(_disk.Path, "crew", ".", "--exact");

        Assert.Equal(ExitCode.Usage, run.AssertNoBug().Code);
        Assert.Contains("dotnet tool install -g procscript-exact", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pack_for_two_says_at_each_step_who_and_a_pack_for_one_is_as_ever()
    {
        await CliRun.AtAsync(_disk.Path, "build", ".", "-o", "plain");
        await CliRun.AtAsync(_disk.Path, "build", ".", "-o", "one", "--people", "1");
        var run = await CliRun.AtAsync(_disk.Path, "build", ".", "-o", "two", "--people", "2");

        Assert.Contains("cards.html, cards.md, plan.json, crew.json", run.Output, StringComparison.Ordinal);
        Assert.Equal(Read("plain", "cards.html"), Read("one", "cards.html"));
        Assert.Equal(Read("plain", "plan.json"), Read("two", "plan.json"));
        Assert.DoesNotContain("id=\"crew\"", Read("plain", "cards.html"), StringComparison.Ordinal);
        Assert.Contains("id=\"crew\"", Read("two", "cards.html"), StringComparison.Ordinal);
        Assert.Contains("**[B]**", Read("two", "cards.md"), StringComparison.Ordinal);
        Assert.Contains("| 0:00 | [1]", Read("two", "cards.md"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_holds_a_certificate_is_said_by_its_name_and_a_full_place_keeps_others_out()
    {
        _disk.With("hatch.proc", Hatch.Replace("machine bunker \"bunker\" {", "certificate gas \"gas papers\"\nmachine bunker \"bunker\" {\n  place pit \"pit\" room for 1", StringComparison.Ordinal)
            .Replace("left lid\" {", "left lid\" { in pit  certified gas ", StringComparison.Ordinal).Replace("right lid\" {", "right lid\" { in pit ", StringComparison.Ordinal));
        var run = await CliRun.AtAsync(_disk.Path, "crew", ".", "--certified", "gas=B");
        Assert.Equal(ExitCode.Clean, run.Code);
        Assert.Contains("  gas papers (gas): B; asked for at steps 1, 2, 7, 8", run.Output, StringComparison.Ordinal);
        Assert.Contains("  pit: room for 1 person, steps 1-8", run.Output, StringComparison.Ordinal);
        Assert.Contains("  2 people       6:00  saves nothing", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"0:00  B +1\. Undo 2 × bolt", run.Output);

        await CliRun.AtAsync(_disk.Path, "build", ".", "-o", "two", "--people", "2", "--certified", "gas=B");
        var card = Read("two", "cards.md");
        Assert.Contains("- gas papers: only B (step [1](#step-1), [2](#step-2), [7](#step-7), [8](#step-8)).", card, StringComparison.Ordinal);
        Assert.Contains("pit: room for 1 person (step ", card, StringComparison.Ordinal);
        Assert.Contains("**Only with:** gas papers.", card, StringComparison.Ordinal);
        Assert.Contains("Place: pit, room for 1 person.", card, StringComparison.Ordinal);

        var missing = await CliRun.AtAsync(_disk.Path, "crew", ".", "--certified", "gas=C");
        Assert.Equal(ExitCode.Usage, missing.AssertNoBug().Code);
        Assert.Contains("there are 2 people, from A on, and no C", missing.Error, StringComparison.Ordinal);
    }

    private string Read(string folder, string file) => File.ReadAllText(Path.Combine(_disk.Path, folder, "lids_off", file));
}
