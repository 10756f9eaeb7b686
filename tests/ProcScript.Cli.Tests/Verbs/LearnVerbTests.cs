using System.Globalization;
using System.Text.Json;

namespace ProcScript.Cli.Tests.Verbs;

/// <summary><c>learn</c>, over jobs that were told by the verbs of <c>job</c>.</summary>
public sealed class LearnVerbTests : IDisposable
{
    private const string Tank = """
        tool socket_13 "13 mm socket" { size 13 mm }
        tool stool "step stool"
        clip pin "push pin" { tool socket_13  spare 5 %  time 3 s }
        fastener m8 "M8 bolt" { thread M8x1.25  drive socket_13  torque 20 ± 2 N.m  grade 8.8 }
        machine tank "water tank" {
          part lid "lid" { mass 2 kg  held by 4 m8 as lid_bolts { pattern none } }
          part pump "pump" { mass 2 kg  behind lid  held by 3 pin as pump_pins }
        }

        procedure pump_out "Take the pump out" on tank {
          goal remove pump
          stage "Lid" { undo lid_bolts  remove lid }
          stage "Pump" { release pump_pins  remove pump }
        }

        """;

    private readonly TemporaryFolder _disk = new();

    public LearnVerbTests() => _disk.With("shop/tank.proc", Tank);

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task What_jobs_tell_is_listed_with_counts_and_the_edit_and_nothing_is_written()
    {
        await JobsAsync();
        var run = await RunAsync("jobs", "--in", "shop");

        Assert.Equal((ExitCode.Findings, ""), (run.Code, run.Error));
        Assert.StartsWith("3 jobs, 0 closed: 3 pump_out\n21 of 24 ticked steps measured\nnot measured: 3 the first tick of somebody\n\n", run.Output, StringComparison.Ordinal);
        Assert.Contains(
            """
            time 1: push pin
             --> shop/tank.proc:3:6
              = written: 3 s each
              = seen: 20 s each in 3 jobs, all from 20 s to 20 s; at: Engage 3 × push pin; Release 3 × push pin
              = write: time 20 s
            3 - clip pin "push pin" { tool socket_13  spare 5 %  time 3 s }
            3 + clip pin "push pin" { tool socket_13  spare 5 %  time 20 s }
            """,
            run.Output,
            StringComparison.Ordinal);
        Assert.Contains("  = seen: 4 broke of 9 pieces, in 3 of 3 jobs; 1 job needed more than the order list had\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("note 4: Remove the lid\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("   = seen: “the rim is sharp”, in 2 wordings: noted 3 times in 3 jobs\n", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("; nothing is written: --apply writes what can be, --only SORT a part of it\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(Tank, _disk.Read("shop/tank.proc"));
    }

    [Fact]
    public async Task What_is_applied_checks_is_laid_out_and_is_not_suggested_again()
    {
        await JobsAsync();
        var run = await RunAsync("jobs", "--in", "shop", "--apply");
        var text = _disk.Read("shop/tank.proc");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.Contains("wrote 4 suggestions into 1 file; ", run.Output, StringComparison.Ordinal);
        Assert.Contains("clip pin \"push pin\" { tool socket_13  spare 45 %  time 20 s }", text, StringComparison.Ordinal);
        Assert.Contains("remove lid { tool stool  how \"The rim is sharp.\" }", text, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(_disk.Path, "check", "shop")).Code);
        Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(_disk.Path, "format", "--check", "shop")).Code);
        var again = await RunAsync("jobs", "--in", "shop");
        Assert.Equal((ExitCode.Clean, ""), (again.Code, again.Error));
        Assert.EndsWith("nothing to suggest: no 3 jobs tell otherwise than the library\n", again.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_part_of_it_is_shown_as_a_diff_that_patch_takes()
    {
        await JobsAsync();
        var run = await RunAsync("jobs", "--in", "shop", "--only", "time", "--diff");

        Assert.Contains("--- a/shop/tank.proc\n+++ b/shop/tank.proc\n@@ ", run.Output, StringComparison.Ordinal);
        Assert.Contains("\n+clip pin \"push pin\" { tool socket_13  spare 5 %  time 20 s }\n", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("rim is sharp", run.Output, StringComparison.Ordinal);
        Assert.Equal(Tank, _disk.Read("shop/tank.proc"));
    }

    [Fact]
    public async Task A_program_reads_it_as_data()
    {
        await JobsAsync();
        var run = await RunAsync("jobs", "--in", "shop", "--format", "json");
        var told = JsonDocument.Parse(run.Output).RootElement;

        Assert.Equal((ExitCode.Findings, 21), (run.Code, told.GetProperty("measured").GetInt32()));
        var time = told.GetProperty("suggestions").EnumerateArray().Single(one => one.GetProperty("sort").GetString() == "time");
        Assert.Equal(("shop/tank.proc", 3, "time 20 s"), (time.GetProperty("path").GetString(), time.GetProperty("line").GetInt32(), time.GetProperty("write").GetString()));
        Assert.Equal((3, 20.0), (time.GetProperty("seconds").GetProperty("jobs").GetInt32(), time.GetProperty("seconds").GetProperty("median").GetDouble()));
    }

    [Fact]
    public async Task A_single_job_tells_what_it_has_where_that_is_asked_for()
    {
        await JobsAsync();

        Assert.Contains("time 20 s", (await RunAsync("jobs/1-pump_out", "--in", "shop", "--at-least", "1")).Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await RunAsync("jobs/1-pump_out", "--in", "shop")).Code);
        // Named twice it is one job all the same.
        Assert.Equal(ExitCode.Clean, (await RunAsync("jobs/1-pump_out", "jobs/1-pump_out", "jobs/2-pump_out", "--in", "shop")).Code);
    }

    [Fact]
    public async Task A_damaged_journal_counts_as_far_as_it_holds_and_a_job_that_cannot_be_read_is_left_out()
    {
        await JobsAsync();
        _disk.With("jobs/1-pump_out/journal.jsonl", _disk.Read("jobs/1-pump_out/journal.jsonl").Replace("\"step\":4", "\"step\":5", StringComparison.Ordinal));
        _disk.With("jobs/2-pump_out/library/shop/tank.proc", "machine {");
        var run = await RunAsync("jobs", "--in", "shop", "--at-least", "2");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains("the journal of 'jobs/1-pump_out' is damaged in line ", run.Error, StringComparison.Ordinal);
        Assert.Contains("'jobs/2-pump_out' is left out: what the plan of '2-pump_out' was made from does not come to a proven procedure", run.Error, StringComparison.Ordinal);
        Assert.StartsWith("2 jobs, 0 closed: 2 pump_out\n", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("there is no folder 'nowhere'", "nowhere", "--in", "shop")]
    [InlineData("'shop' holds no job: a folder with a journal.jsonl is one", "shop", "--in", "shop")]
    [InlineData("an empty path names no job", "", "--in", "shop")]
    [InlineData("there is no file or folder 'lost'", "jobs", "--in", "lost")]
    [InlineData("no job is of this library: jobs/1-pump_out: this library has no procedure pump_out. --in names the library.", "jobs", "--in", "other")]
    [InlineData("is what 'jobs/1-pump_out' was made from, and stays as it was", "jobs", "--in", ".")]
    [InlineData("a library comes from files", "jobs", "--in", "-")]
    [InlineData("say one of them", "jobs", "--in", "shop", "--apply", "--diff")]
    [InlineData("--at-least takes a number from 1 up", "jobs", "--at-least", "0")]
    public async Task What_cannot_be_learned_from_is_refused_with_the_reason(string why, params string[] arguments)
    {
        await JobsAsync(1);
        _disk.With("other/tank.proc", Tank.Replace("pump_out", "pump_new", StringComparison.Ordinal));
        var run = await RunAsync(arguments);

        Assert.Equal((ExitCode.Usage, ""), (run.Code, run.Output));
        Assert.Contains(why, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("either --tool or the item", "lid_bolts", "--tool", "stool")]
    [InlineData("--step goes with --tool", "lid_bolts", "--step", "2")]
    [InlineData("there is no step 99", "--tool", "stool", "--step", "99")]
    [InlineData("say which tool", "--tool", " ")]
    public async Task A_missing_tool_that_cannot_be_is_refused(string why, params string[] arguments)
    {
        await JobsAsync(1);
        var run = await CliRun.AtAsync(_disk.Path, ["job", "missing", "jobs/1-pump_out", .. arguments, "--by", "Kern"]);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains(why, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_tool_is_told_of_and_keeps_no_job_from_being_closed()
    {
        await JobsAsync(1);
        var status = await CliRun.AtAsync(_disk.Path, "job", "status", "jobs/1-pump_out");

        Assert.Contains("a tool was missing at step 2: step stool", status.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("stool", (await CliRun.AtAsync(_disk.Path, "job", "close", "jobs/1-pump_out", "--by", "Kern")).Output, StringComparison.Ordinal);
    }

    /// <summary>Jobs in which each step takes a minute; pins of which some broke, a tool that was missing, a note.</summary>
    private async Task JobsAsync(int count = 3)
    {
        for (var job = 1; job <= count; job++)
        {
            await TellAsync("open", "pump_out", "--in", "shop", "--order", $"{job}");
            var folder = $"jobs/{job}-pump_out";
            var at = new DateTime(2026, 3, job, 8, 0, 0, DateTimeKind.Utc);
            for (var step = 1; step <= 8; step++)
            {
                at = at.AddSeconds(step is 2 or 4 or 5 or 7 ? 30 : step == 8 ? 32 : 60);
                await TellAsync("done", folder, $"{step}", "--at", at.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture));
            }

            await TellAsync("broke", folder, "pump_pins", "--count", job == 1 ? "2" : "1");
            await TellAsync("missing", folder, "--tool", job == 2 ? "stool" : "step stool", "--step", "2");
            await TellAsync("note", folder, job == 3 ? "The rim: is sharp!" : "the rim is sharp", "--step", "2");
        }
    }

    private async Task TellAsync(params string[] arguments)
    {
        var run = (await CliRun.AtAsync(_disk.Path, ["job", .. arguments, "--by", "Kern"])).AssertNoBug();
        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
    }

    private async Task<CliRun> RunAsync(params string[] arguments) => (await CliRun.AtAsync(_disk.Path, ["learn", .. arguments])).AssertNoBug();
}
