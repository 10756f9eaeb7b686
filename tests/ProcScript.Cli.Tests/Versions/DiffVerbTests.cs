using System.Text.Json.Nodes;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Versions;

public sealed class DiffVerbTests : IDisposable
{
    private readonly GitFolder _git = new();

    public DiffVerbTests()
    {
        _git.Disk.With("jobs/machine.proc", Sample.Machine).With("jobs/pump.proc", "use \"machine.proc\"\n" + Sample.Procedure);
        _git.Commit();
        _git.Git("tag", "v1");
        _git.Disk.With("jobs/machine.proc", Sample.Machine.Replace("held by 4 m8", "held by 6 m8", StringComparison.Ordinal));
    }

    public void Dispose() => _git.Dispose();

    [Fact]
    public async Task A_revision_alone_is_what_the_other_side_names()
    {
        var run = await DiffAsync("v1", "jobs");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.Contains("p on m, Replace the pump: revision ", run.Output, StringComparison.Ordinal);
        Assert.Contains("    ~ step 2, All: Undo 6 × M8 bolt\n      count: 4 → 6\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("    Bag 1 label: All\n", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("printed pages and labels are void.\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(run, await DiffAsync("v1:jobs", "jobs"));
        Assert.Equal(run, await DiffAsync("v1", "."));
    }

    [Fact]
    public async Task Two_revisions_two_files_and_two_folders_are_compared()
    {
        _git.Commit();
        _git.Git("tag", "v2");
        var run = await DiffAsync("v1", "v2");
        Assert.Contains("count: 4 → 6", run.Output, StringComparison.Ordinal);
        Assert.Equal(run, await DiffAsync("v1:jobs/pump.proc", "v2:jobs/pump.proc"));
        Assert.Equal("No pack says otherwise.\n", (await DiffAsync("v2", "jobs")).Output);

        _git.Disk.With("a/x.proc", Sample.Text).With("b/x.proc", Sample.Text.Replace("remove pump }", "task \"Wipe the seat.\"  remove pump }", StringComparison.Ordinal).Replace("            remove pump\n", "            task \"Wipe the seat.\"\n            remove pump\n", StringComparison.Ordinal));
        Assert.Equal(await DiffAsync("a", "b"), await DiffAsync("a/x.proc", "b/x.proc"));
    }

    [Fact]
    public async Task What_is_gone_now_was_there_then()
    {
        _git.Disk.With("old/x.proc", Sample.Text);
        _git.Commit();
        _git.Git("tag", "v3");
        Directory.Delete(_git.Disk["old"], recursive: true);

        Assert.Equal("No pack says otherwise.\n", (await DiffAsync("v3:old", "v3:old/x.proc")).Output);
    }

    [Fact]
    public async Task A_lost_alert_is_a_finding_and_fails_the_run()
    {
        var with = Sample.Text.Replace("    undo pump_bolts", "    warning \"The edge cuts. Wear gloves.\"\n    undo pump_bolts", StringComparison.Ordinal);
        _git.Disk.With("a/x.proc", with).With("b/x.proc", Sample.Text);

        var run = await DiffAsync("a", "b");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.StartsWith("warning PRC5095 alert-weakened: the warning before step 5 of p is gone\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("--> b/x.proc:", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("1 alert is gone or weaker.\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await DiffAsync("b", "a")).Code);
    }

    [Fact]
    public async Task A_lost_precaution_is_a_finding_and_fails_the_run()
    {
        _git.Disk.With("a/x.proc", Sample.Text).With("b/x.proc", Sample.Text.Replace("wait 60 s", "wait 10 s", StringComparison.Ordinal));

        var run = await DiffAsync("a", "b");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.StartsWith("warning PRC5096 safety-step-lost: the wait of the battery is weaker for p: 60 s before, 10 s now\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("    ! weaker: battery, wait: 60 s → 10 s\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("1 precaution is gone or weaker", run.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await DiffAsync("b", "a")).Code);
    }

    [Fact]
    public async Task A_job_that_is_no_longer_proven_fails_the_run()
    {
        _git.Disk.With("a/x.proc", Sample.Text).With("b/x.proc", Sample.Text.Replace("    undo cover_bolts\n", "", StringComparison.Ordinal));

        var run = await DiffAsync("a", "b");

        Assert.Equal(
            new CliRun(ExitCode.Findings, "No longer proven: no pack can be made\n    ! p on m, Replace the pump\n1 job no longer proven.\n", ""),
            run);
    }

    [Fact]
    public async Task Markdown_is_for_a_review_and_JSON_for_a_program()
    {
        var markdown = await DiffAsync("v1", "jobs", "--format", "markdown");
        Assert.StartsWith("### p on m, Replace the pump: revision ", markdown.Output, StringComparison.Ordinal);
        Assert.Contains("\n**Strip**\n\n- changed: step 2, All: Undo 6 × M8 bolt\n  - count: 4 → 6\n", markdown.Output, StringComparison.Ordinal);

        var json = JsonNode.Parse((await DiffAsync("v1", "jobs", "--format", "json")).Output)!;
        Assert.Equal("6", (string?)json["changed"]![0]!["steps"]![0]!["values"]![0]!["new"]);
    }

    [Fact]
    public async Task What_names_nothing_is_said()
    {
        Assert.Equal(
            new CliRun(ExitCode.Usage, "", "procscript: there is no revision 'nope': name a branch, a tag or a commit of this repository.\n"),
            await DiffAsync("nope", "jobs"));
        Assert.Equal(
            new CliRun(ExitCode.Usage, "", "procscript: there was no .proc file at 'nowhere' in revision 'v1'.\n"),
            await DiffAsync("v1:nowhere", "jobs"));
        Assert.Equal(ExitCode.Usage, (await DiffAsync("", "jobs")).Code);
        Assert.Equal(ExitCode.Usage, (await DiffAsync("--all", "jobs")).Code);
    }

    private Task<CliRun> DiffAsync(params string[] arguments) => CliRun.AtAsync(_git.Disk.Path, ["diff", .. arguments]);
}
