using System.Text.Json;
using Json.Schema;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class AuditVerbTests : IDisposable
{
    private const string Hatch =
        """
        tool key "5 mm hex key"
        clip pin "push pin" { tool key }
        machine bunker "bunker" {
          part lid "lid" { held by 4 pin as lid_pins }
          part chute "chute" { behind lid }
          part sieve "sieve" { behind lid }
        }
        procedure chute_off "Take the chute off" on bunker {
          goal remove chute
          stage "Lid" { release lid_pins  remove lid }
          stage "Chute" { remove chute }
          work { clean chute }
        }
        """;

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task What_nothing_notices_is_listed_by_machine_and_procedure()
    {
        _disk.With("hatch.proc", Hatch);

        var run = await CliRun.AtAsync(_disk.Path, "audit", ".");

        Assert.Equal(
            new CliRun(
                ExitCode.Clean,
                """
                machine bunker: 4 of 6 mistakes noticed
                  facts of items that no job touches
                    hatch.proc:6: sieve behind lid left out
                  procedure chute_off: 3 of 4 mistakes noticed
                    hatch.proc:12: clean chute left out (changes bags, refit, strip, times, work of chute_off)
                6 mistakes tried: 3 noticed as an error, 1 as a hint, 2 unnoticed

                """.ReplaceLineEndings("\n"),
                ""),
            run);
        Assert.Equal(Hatch, File.ReadAllText(Path.Combine(_disk.Path, "hatch.proc")));
    }

    [Theory]
    [InlineData("1", 1)]
    [InlineData("2", 0)]
    [InlineData("-1", 2)]
    public async Task A_build_server_can_set_a_limit(string most, int code)
    {
        _disk.With("hatch.proc", Hatch);

        Assert.Equal(code, (int)(await CliRun.AtAsync(_disk.Path, "audit", ".", "--at-most", most)).Code);
    }

    [Fact]
    public async Task For_programs_it_is_written_as_its_schema_says()
    {
        _disk.With("hatch.proc", Hatch);

        var run = await CliRun.AtAsync(_disk.Path, "audit", ".", "--format", "json", "-o", "audit.json");

        Assert.Equal("wrote audit.json: 6 mistakes tried: 3 noticed as an error, 1 as a hint, 2 unnoticed\n", run.Output);
        var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(_disk.Path, "audit.json"))).RootElement;
        var schema = JsonSchema.FromFile(Path.Combine(Checkout.Root, "src", "ProcScript.Analysis", "audit.schema.json"));
        Assert.True(schema.Evaluate(document).IsValid);
        Assert.Equal(3, document.GetProperty("errors").GetInt32());
        Assert.Equal(["fact-left-out", "step-left-out"], document.GetProperty("unnoticed").EnumerateArray().Select(one => one.GetProperty("sort").GetString()));
    }

    [Fact]
    public async Task A_library_with_errors_is_not_audited()
    {
        _disk.With("hatch.proc", Hatch.Replace("release lid_pins  ", "", StringComparison.Ordinal));

        var run = await CliRun.AtAsync(_disk.Path, "audit", ".");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Equal("", run.Output);
        Assert.StartsWith("procscript: the library has 1 error: what is wrong already hides what else would be noticed.", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_not_written_over_what_is_read()
    {
        _disk.With("hatch.proc", Hatch);

        var run = await CliRun.AtAsync(_disk.Path, "audit", ".", "-o", "hatch.proc");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Equal(Hatch, File.ReadAllText(Path.Combine(_disk.Path, "hatch.proc")));
    }

    [Fact]
    public async Task Who_looks_on_sees_how_far_it_has_come_and_nothing_is_left_of_it()
    {
        _disk.With("hatch.proc", Hatch);

        var run = await CliRun.AtAsync(_disk.Path, ["audit", "."], input: null, around => around with { ErrorIsTerminal = true });

        Assert.Contains("\r6 of 6 mistakes tried", run.Error, StringComparison.Ordinal);
        Assert.EndsWith("\r", run.Error, StringComparison.Ordinal);
    }
}
