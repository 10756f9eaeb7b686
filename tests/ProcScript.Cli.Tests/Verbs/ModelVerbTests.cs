using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class ModelVerbTests : IDisposable
{
    private const string Press =
        """
        tool key "key"
        fastener bolt "bolt" { drive key }
        clip cap "cap"
        connector plug_2 "plug"
        machine press "Press" {
          option rail "rail"
          control lever "lever" { up, down }
          energy mains "mains" { isolate "Off." verify "Dark." at motor_plug { behind lid } restore "On." strip needs lever at down }
          fluid oil "oil" { empty "Out." fill "In." }
          when rail { part bar "bar" }
          part lid "lid" { held by 2 bolt as lid_bolts { covered by 2 cap as lid_caps } aside "Tilt." needs lid_bolts }
          part motor "motor" { mass 2 lb  behind lid  wired by 1 plug_2 as motor_plug { to lid  on mains } }
        }

        """;

    private const string Table = "machine table \"Table\" { part top \"top\" }\n";

    private readonly TemporaryFolder _disk = new();

    public ModelVerbTests() => _disk.With("press.proc", Press).With("table.proc", Table);

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task Machines_come_as_data_in_each_variant_that_the_schema_describes()
    {
        var (run, model) = await ModelAsync("press.proc", "table.proc");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.Equal(
            ["press ", "press rail", "table "],
            model["machines"]!.AsArray().Select(machine => $"{machine!["name"]} {string.Join('+', machine["with"]!.AsArray().Select(option => (string?)option))}"));
        var schema = JsonSchema.FromFile(Path.Combine(Checkout.Root, "src", "ProcScript.Analysis", "model.schema.json"));
        Assert.True(schema.Evaluate(JsonSerializer.SerializeToElement(model)).IsValid);
        model["machines"]![0]!["parts"]![0]!["more"] = 1;
        Assert.False(schema.Evaluate(JsonSerializer.SerializeToElement(model)).IsValid);
    }

    [Fact]
    public async Task A_joint_has_both_ends_a_cover_what_it_hides_and_a_condition_its_phase()
    {
        var (_, model) = await ModelAsync("press.proc");
        var machine = model["machines"]![0]!;
        var joints = machine["joints"]!.AsArray().ToDictionary(joint => (string)joint!["name"]!);

        Assert.Equal(("motor", "lid", "mains"), ((string)joints["motor_plug"]!["part"]!, (string)joints["motor_plug"]!["to"]!, (string)joints["motor_plug"]!["on"]!));
        Assert.Equal(("lid", "", 2), ((string)joints["lid_bolts"]!["part"]!, (string)joints["lid_bolts"]!["to"]!, (int)joints["lid_bolts"]!["start"]!));
        Assert.Equal("lid_bolts", (string)joints["lid_caps"]!["covers"]!);
        Assert.Equal(
            """[{"phase":"strip","any":[{"item":"lever","state":"at","position":"down"}]}]""",
            machine["energies"]![0]!["needs"]!.ToJsonString());
        Assert.Equal(
            """{"item":"motor_plug","words":"motor plug","needs":[{"phase":"both","any":[{"item":"lid","state":"away","position":""}]}]}""",
            machine["energies"]![0]!["proof"]!.ToJsonString());
        Assert.Equal(0.907, (double)machine["parts"]![1]!["kilograms"]!, 3);
    }

    [Fact]
    public async Task An_item_has_the_place_around_it_and_what_somebody_must_hold_who_works_on_it()
    {
        _disk.With(
            "van.proc",
            """
            certificate gas "refrigerant certificate"
            tool key "key"
            fastener bolt "bolt" { drive key }
            machine van "Van" {
              place bay "engine bay" room for 1
              fluid refrigerant "refrigerant" { hazard refrigerant  certified gas  in bay  charge 0.5 kg  empty "Out."  fill "In." }
              part drier "drier" { in bay  held by 2 bolt as drier_bolts }
              part step "step" { held by 2 bolt as step_bolts { in bay } }
            }

            """);

        var (_, model) = await ModelAsync("van.proc");

        var machine = model["machines"]![0]!;
        Assert.Equal("""[{"name":"bay","title":"engine bay","room":1}]""", machine["places"]!.ToJsonString());
        Assert.Equal("""[{"name":"gas","title":"refrigerant certificate"}]""", machine["certificates"]!.ToJsonString());
        Assert.Equal(("bay", """["gas"]"""), ((string?)machine["fluids"]![0]!["place"], machine["fluids"]![0]!["certificates"]!.ToJsonString()));
        Assert.Equal(["drier bay", "step "], machine["parts"]!.AsArray().Select(part => $"{part!["name"]} {part["place"]}"));
        Assert.Equal(["drier_bolts bay", "step_bolts bay"], machine["joints"]!.AsArray().Select(joint => $"{joint!["name"]} {joint["place"]}"));
    }

    [Fact]
    public async Task One_machine_or_one_variant_can_be_asked_for()
    {
        Assert.Equal("table", (string)Assert.Single((await ModelAsync(".", "--machine", "table")).Model["machines"]!.AsArray())!["name"]!);
        Assert.Equal("bar", (string)Assert.Single((await ModelAsync(".", "--with", "rail")).Model["machines"]!.AsArray())!["parts"]![0]!["name"]!);

        Assert.Contains("there is no machine 'chair'; there are: press, table.", (await RunAsync(".", "--machine", "chair")).Error, StringComparison.Ordinal);
        Assert.Contains("there is no option 'roof'; there are: rail.", (await RunAsync(".", "--with", "roof")).Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_gets_the_same_text_as_the_output()
    {
        var run = await RunAsync(".", "-o", "out/model.json");

        Assert.Equal(new CliRun(ExitCode.Clean, "wrote out/model.json: 2 machines\n", ""), run);
        Assert.Equal((await RunAsync(".")).Output, _disk.Read("out/model.json"));
    }

    [Fact]
    public async Task Nothing_is_written_of_a_text_with_errors()
    {
        _disk.With("table.proc", Table.Replace("part top", "part top behind shelf part"));

        var run = await RunAsync("table.proc");

        Assert.Equal((ExitCode.Findings, ""), (run.Code, run.Output));
        Assert.Contains("error PRC1", run.Error, StringComparison.Ordinal);
        Assert.EndsWith("procscript: the text has errors: nothing written.\n", run.Error, StringComparison.Ordinal);
    }

    private async Task<(CliRun Run, JsonNode Model)> ModelAsync(params string[] arguments)
    {
        var run = await RunAsync(arguments);
        return (run, JsonNode.Parse(run.Output)!);
    }

    private async Task<CliRun> RunAsync(params string[] arguments) => (await CliRun.AtAsync(_disk.Path, ["model", .. arguments])).AssertNoBug();
}
