namespace ProcScript.Cli.Tests.Verbs;

public sealed class TestVerbTests : IDisposable
{
    private const string Bunker =
        """
        tool key "5 mm hex key"
        clip pin "push pin" { tool key }
        machine bunker "bunker" { part lid "lid" { held by 4 pin as lid_pins } }
        procedure lid_off "Take the lid off" on bunker {
          goal remove lid
          stage "Lid" { release lid_pins  remove lid }
        }
        """;

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task What_is_otherwise_is_told_at_its_line()
    {
        _disk.With("bunker.proc", Bunker).With("jobs.expect", "pack lid_off\n  steps 5\n  strip release lid_pins, remove lid\n  colour red\n");

        Assert.Equal(
            new CliRun(
                ExitCode.Findings,
                """
                jobs.expect:2: lid_off has 4 steps, not 5
                    steps 5
                jobs.expect:4: 'colour' can't be expected of a pack; there are: strip, work, refit, time, bags, orders, people, steps, tools, not proven
                    colour red
                3 expectations in 1 file: 2 not met

                """.ReplaceLineEndings("\n"),
                ""),
            await CliRun.AtAsync(_disk.Path, "test", "."));
    }

    [Fact]
    public async Task How_it_is_now_is_taken_over_on_demand()
    {
        _disk.With("bunker.proc", Bunker).With("jobs.expect", "\uFEFFpack lid_off  // ours\n");

        var run = await CliRun.AtAsync(_disk.Path, "test", "jobs.expect", "--update");

        Assert.Equal(new CliRun(ExitCode.Clean, "updated jobs.expect\n1 expectation in 1 file: all met\n", ""), run);
        Assert.Equal(
            """
            pack lid_off  // ours
              strip release lid_pins, remove lid
              refit fit lid, engage lid_pins
              bags 1
              orders 0
              people 1
              steps 4
              tools 1
              time 1 .. 2 min

            """.ReplaceLineEndings("\n"),
            File.ReadAllText(Path.Combine(_disk.Path, "jobs.expect")));
        Assert.Equal("8 expectations in 1 file: all met\n", (await CliRun.AtAsync(_disk.Path, "test", ".")).Output);
    }

    [Fact]
    public async Task A_library_that_expects_nothing_is_told_how_to_begin()
    {
        _disk.With("bunker.proc", Bunker);

        var run = await CliRun.AtAsync(_disk.Path, "test", ".");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith("procscript: there is no .expect file in '.'. Write one line, such as 'pack seat_out', into one,", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_demo_library_meets_what_it_expects()
    {
        var run = await CliRun.AtAsync(Checkout.Root, "test", "procedures");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.EndsWith(": all met\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_audit_counts_what_only_expectations_notice()
    {
        _disk.With("bunker.proc", Bunker.Replace("remove lid }\n}", "remove lid }\n  work { clean lid }\n}", StringComparison.Ordinal)).With("jobs.expect", "pack lid_off\n  work clean lid\n");

        var run = await CliRun.AtAsync(_disk.Path, "audit", ".");
        _disk.With("jobs.expect", "pack lid_off\n  steps 1\n");
        var unmet = await CliRun.AtAsync(_disk.Path, "audit", ".");

        Assert.EndsWith(", 1 by what the library expects, 0 unnoticed\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Findings, unmet.Code);
        Assert.Contains("1 expectation not met", unmet.Error, StringComparison.Ordinal);
    }
}
