using System.Text.Json;
using System.Xml.Linq;
using Json.Schema;

namespace ProcScript.Cli.Tests.Verbs;

/// <summary><c>back</c>, <c>together</c>, <c>why</c> and <c>map</c>, from what is typed to what is told.</summary>
public sealed class QuestionVerbTests : IDisposable
{
    private const string Tank = """
        tool socket_13 "13 mm socket" { size 13 mm }
        clip pin "pin"
        fastener m8 "M8 bolt" { thread M8x1.25  drive socket_13  torque 20 ± 2 N.m  grade unknown }
        machine tank "water tank" {
          part lid "lid" { held by 6 m8 as lid_bolts }
          part float "float" { behind lid  held by 2 m8 as float_bolts }
          part seal "seal" { single use  behind lid  renew with lid }
          part filter "filter" { behind lid  held by 2 pin as filter_pins }
        }
        procedure float_out "Take the float out" on tank {
          goal remove float
          stage "Lid" { undo 2 of lid_bolts  undo rest of lid_bolts  remove lid  remove seal }
          stage "Float" { undo float_bolts  remove float }
          work { replace seal }
        }
        procedure filter_out "Take the filter out" on tank {
          goal remove filter
          stage "Lid" { undo lid_bolts  remove lid  remove seal }
          stage "Filter" { release filter_pins  remove filter }
          work { replace seal }
        }

        """;

    private readonly TemporaryFolder _disk = new();

    public QuestionVerbTests() => _disk.With("tank.proc", Tank);

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task From_the_middle_of_a_job_bolts_that_came_out_in_pieces_go_back_in_one()
    {
        var run = await RunAsync("back", "float_out", "--after", "2");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.StartsWith("Back from step 2 (Undo 6 × M8 bolt) of 'Take the float out', water tank\nAbout ", run.Output, StringComparison.Ordinal);
        Assert.Contains("Fasten 6 × M8 bolt (lid)", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("seal", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_strip_has_disturbed_is_renewed_on_the_way_back()
    {
        var run = await RunAsync("back", "float_out", "--after", "3");

        Assert.Contains("New on the way back, since it serves only once or was disturbed: seal.\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("Fit the lid", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("float [", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("float_out", "0", "'float_out' has no step 0 before its refit: strip and work have the steps 1 to ")]
    [InlineData("float_out", "99", "'float_out' has no step 99 before its refit: strip and work have the steps 1 to ")]
    [InlineData("flaot_out", "1", "there is no procedure 'flaot_out'; did you mean 'float_out'?")]
    public async Task A_step_or_a_job_that_is_not_there_is_refused(string job, string after, string said)
    {
        var run = await RunAsync("back", job, "--after", after);

        Assert.Equal((ExitCode.Findings, ""), (run.Code, run.Output));
        Assert.StartsWith($"procscript: {said}", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_jobs_in_one_visit_take_the_lid_off_once()
    {
        var run = await RunAsync("together", "float_out", "filter_out");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.Single(run.Output.Split('\n'), line => line.Contains("Remove the lid", StringComparison.Ordinal));
        Assert.Single(run.Output.Split('\n'), line => line.Contains("Fit the lid", StringComparison.Ordinal));
        Assert.Contains("it saves ", run.Output, StringComparison.Ordinal);
        Assert.Contains("No visit that does all of it is quicker", run.Output, StringComparison.Ordinal);
        Assert.Contains("Fit the float", run.Output, StringComparison.Ordinal);
        Assert.Contains("Fit the filter", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_job_is_no_visit_of_several()
    {
        var run = await RunAsync("together", "float_out", "float_out");

        Assert.Equal((ExitCode.Findings, "procscript: name two jobs or more, 12 at the most, each once.\n"), (run.Code, run.Error));
    }

    [Fact]
    public async Task An_item_is_told_with_all_that_it_has_to_do_with()
    {
        var run = await RunAsync("why", "lid");

        Assert.Equal(
            """
            lid (lid), water tank
            Held by, or covered by
              6 × M8 bolt (lid): undo lid_bolts
            Asked for by
              float (float): needs the lid out of the way
              seal (seal): needs the lid out of the way
              filter (filter): needs the lid out of the way
            Once it comes off, these are to be renewed
              seal (seal)
            Touched by
              remove in float_out (tank.proc:12)
              remove in filter_out (tank.proc:18)

            """,
            run.Output);
        Assert.Equal(ExitCode.Findings, (await RunAsync("why", "lit")).Code);
    }

    [Theory]
    [InlineData("back", "back", "float_out", "--after", "3")]
    [InlineData("together", "together", "float_out", "filter_out")]
    [InlineData("why", "why", "lid")]
    public async Task For_programs_each_is_written_as_its_schema_says(string schema, params string[] arguments)
    {
        var run = await RunAsync([.. arguments, "--format", "json"]);

        var document = JsonDocument.Parse(run.Output).RootElement;
        Assert.True(JsonSchema.FromFile(Path.Combine(Checkout.Root, "src", "ProcScript.Cards", $"{schema}.schema.json")).Evaluate(document).IsValid);
    }

    [Fact]
    public async Task A_map_shows_each_part_once_with_its_layer_and_a_line_for_each_that_is_hidden()
    {
        var svg = XDocument.Parse((await RunAsync("map", "--format", "svg")).Output).Root!;
        var space = svg.Name.Namespace;

        Assert.Equal(["lid: fitted", "seal: fitted", "float: fitted", "filter: fitted"], svg.Elements(space + "a").Select(part => part.Element(space + "title")!.Value));
        Assert.Equal(["layer 1, 1", "layer 2, 1", "layer 3, 2"], svg.Elements(space + "text").Skip(1).Select(text => text.Value));
        Assert.Equal(3, svg.Elements(space + "path").Count());
    }

    [Fact]
    public async Task A_map_shows_how_a_job_leaves_the_machine()
    {
        var run = await RunAsync("map", "--job", "float_out", "--after", "3", "-o", "map.html");

        Assert.Equal((ExitCode.Clean, "wrote map.html: 4 parts\n"), (run.Code, run.Output));
        var page = _disk.Read("map.html");
        Assert.Contains("<a href=\"#part-lid\" class=\"out\"><title>lid: out</title>", page, StringComparison.Ordinal);
        Assert.Contains("<section id=\"part-float\"><h2>float <code>float</code></h2><p>fitted; layer 3</p><p data-side=\"behind\">behind: <a href=\"#part-lid\">lid</a></p>", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_map_goes_to_drawing_programs()
    {
        var dot = (await RunAsync("map", "--format", "dot")).Output;
        var mermaid = (await RunAsync("map", "--format", "mermaid")).Output;

        Assert.StartsWith("digraph \"tank\" {\n", dot, StringComparison.Ordinal);
        Assert.Contains("  \"lid\" -> \"float\";\n", dot, StringComparison.Ordinal);
        Assert.StartsWith("flowchart LR\n  subgraph layer1[\"layer 1\"]\n    part-lid[\"lid\"]:::fitted\n", mermaid, StringComparison.Ordinal);
        Assert.Contains("  part-lid --> part-float\n", mermaid, StringComparison.Ordinal);
    }

    private Task<CliRun> RunAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, [.. arguments, "--in", "."]);
}
