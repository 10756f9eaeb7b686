using System.Text.Json;
using Json.Schema;

namespace ProcScript.Cli.Tests.Verbs;

/// <summary><c>reach</c>, from what is typed to what is told and written.</summary>
public sealed class ReachVerbTests : IDisposable
{
    private const string Tank = """
        tool socket_13 "13 mm socket" { size 13 mm }
        clip pin "pin"
        fastener m8 "M8 bolt" { thread M8x1.25  drive socket_13  torque 20 ± 2 N.m  grade unknown }
        machine tank "water tank" {
          part lid "lid" { held by 6 m8 as lid_bolts }
          part hatch "hatch" { held by 2 pin as hatch_pins }
          part float "float" { needs lid out or hatch out  held by 2 m8 as float_bolts }
          part left_hose "hose" { held by 2 pin as left_pins }
          part right_hose "hose" { held by 2 pin as right_pins }
          energy pump "pump" { isolate "Pull the plug."  verify "Press the switch: nothing runs."  restore "Put the plug in." }
        }

        """;

    private const string Circle = """
        machine crate "crate" {
          control valve "valve" { shut, open  needs cage out }
          part ring "ring" { needs valve at open }
          part cage "cage" { behind ring }
        }

        """;

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task The_cheapest_way_is_told_with_reasons_and_with_what_makes_the_next_one_dearer()
    {
        _disk.With("tank.proc", Tank);

        var run = await RunAsync("reach", "float");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.StartsWith("Remove the float, water tank\nNo way is cheaper: proved over ", run.Output, StringComparison.Ordinal);
        Assert.Contains("    2  Remove the hatch [30 s]\n         why: to undo 2 × M8 bolt, which needs the hatch out (step 3)\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("Usual cautions; they do not replace the manufacturer's data", run.Output, StringComparison.Ordinal);
        Assert.Contains("     + Undo 6 × M8 bolt (lid) [96 s]\n     + Remove the lid [60 s]\n     - Remove the hatch [60 s]\n     - Release 2 × pin (hatch) [12 s]\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_action_is_explained_as_a_chain_to_what_was_asked_for()
    {
        _disk.With("tank.proc", Tank);

        var run = await RunAsync("reach", "float", "--explain", "remove hatch");

        Assert.Equal(
            "2  Remove the hatch (hatch): to undo 2 × M8 bolt, which needs the hatch out\n"
            + "  3  Undo 2 × M8 bolt (float_bolts): to remove the float, which needs `float_bolts` undone\n"
            + "    4  Remove the float (float): this is what was asked for\n",
            run.Output);
        var none = await RunAsync("reach", "float", "--explain", "lid");
        Assert.Equal(ExitCode.Findings, none.Code);
        Assert.StartsWith("procscript: the cheapest way has no action 'lid': it has 'release hatch_pins', ", none.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("flaot", "there is no part or joint 'flaot' on 'tank'; did you mean 'float'?")]
    [InlineData("hose", "'hose' may be 'left_hose' or 'right_hose': say which by its name.")]
    [InlineData("pump", "the pump is no part and no joint: nothing has to come off for it. 'procscript why pump' says what it has to do with.")]
    public async Task What_cannot_be_asked_for_is_refused_in_a_line(string item, string said)
    {
        _disk.With("tank.proc", Tank);

        var run = await RunAsync("reach", item);

        Assert.Equal((ExitCode.Findings, "", $"procscript: {said}\n"), (run.Code, run.Output, run.Error));
    }

    [Fact]
    public async Task What_can_never_come_off_is_told_with_its_circle()
    {
        _disk.With("crate.proc", Circle);

        var run = await RunAsync("reach", "ring");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.StartsWith(
            "procscript: the ring can never be reached: the ring needs the valve at `open`, the valve needs the cage out, the cage needs the ring out of the way, and so round again from the ring.",
            run.Error,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_library_with_errors_or_without_a_machine_has_no_answer()
    {
        _disk.With("tank.proc", Tank.Replace("6 m8 as", "6 m9 as", StringComparison.Ordinal));
        var broken = await RunAsync("reach", "float");
        Assert.Equal(
            (ExitCode.Findings, "procscript: the text of the machine 'tank' has errors, so that nothing can be said of it; 'procscript check' shows them.\n"),
            (broken.Code, broken.Error));

        _disk.With("tank.proc", "tool hammer \"hammer\"\n");
        var none = await RunAsync("reach", "float");
        Assert.Equal((ExitCode.Findings, "procscript: there is no machine in what was read.\n"), (none.Code, none.Error));
    }

    [Theory]
    [InlineData("--machine", "boiler")]
    [InlineData("--with", "radio")]
    [InlineData("--for", "fun")]
    [InlineData("--format", "xml")]
    [InlineData("--write", "tank.txt")]
    [InlineData("--write", "tank.proc")]
    [InlineData("--write", "../out.proc")]
    public async Task A_wrong_option_is_a_message_and_writes_nothing(string option, string value)
    {
        _disk.With("tank.proc", Tank);

        var run = (await RunAsync("reach", "float", option, value)).AssertNoBug();

        Assert.NotEqual(ExitCode.Clean, run.Code);
        Assert.Contains(value, run.Error, StringComparison.Ordinal);
        Assert.Equal(Tank, _disk.Read("tank.proc"));
        Assert.Single(_disk.Files());
    }

    [Theory]
    [InlineData("-1")]
    [InlineData("NaN")]
    [InlineData("much")]
    [InlineData("1e999")]
    public async Task A_weight_is_a_number_from_0_on(string weight)
    {
        _disk.With("tank.proc", Tank);

        var run = await RunAsync("reach", "float", "--part-weight", weight);

        Assert.Equal((ExitCode.Usage, ""), (run.Code, run.Output));
        Assert.StartsWith($"procscript: --part-weight takes a number from 0 on, not '{weight}'.\n", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("remove")]
    [InlineData("inspect")]
    [InlineData("replace")]
    public async Task What_is_written_is_a_procedure_of_the_library_that_is_proven(string purpose)
    {
        _disk.With("tank.proc", Tank);

        var run = await RunAsync("reach", "float", "--for", purpose, "--write", "float.proc");

        Assert.Equal((ExitCode.Clean, "wrote float.proc: proven; read it against the machine.\n"), (run.Code, run.Error));
        Assert.StartsWith("use \"tank.proc\"\n", _disk.Read("float.proc"), StringComparison.Ordinal);
        var check = await CliRun.AtAsync(_disk.Path, "check", ".");
        Assert.Equal(ExitCode.Clean, check.Code);
        Assert.EndsWith("checked 1 procedure in 2 files: all proven\n", check.Output + check.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(_disk.Path, "format", "--check", "float.proc")).Code);
    }

    [Fact]
    public async Task For_programs_it_is_written_as_its_schema_says()
    {
        _disk.With("tank.proc", Tank);

        var run = await RunAsync("reach", "float", "--format", "json");

        var document = JsonDocument.Parse(run.Output).RootElement;
        Assert.True(JsonSchema.FromFile(Path.Combine(Checkout.Root, "src", "ProcScript.Cards", "reach.schema.json")).Evaluate(document).IsValid);
        Assert.True(document.GetProperty("isCheapest").GetBoolean());
        Assert.Equal(["release", "remove", "undo", "remove"], document.GetProperty("actions").EnumerateArray().Select(action => action.GetProperty("verb").GetString()));
    }

    private Task<CliRun> RunAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, [.. arguments, "--in", "."]);
}
