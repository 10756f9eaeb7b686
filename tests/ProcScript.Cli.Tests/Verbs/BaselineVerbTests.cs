using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class BaselineVerbTests : IDisposable
{
    private const string File = "baseline.json";

    private const string Wipe = "task \"Wipe the seat as required.\"";

    private const string Grease = "task \"Grease the seat as required.\"";

    private readonly TemporaryFolder _disk = new();

    public BaselineVerbTests() => _disk.With("machine.proc", Sample.Machine).With("a.proc", Job("a", Wipe)).With("b.proc", Job("b", Wipe, Grease));

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task What_is_written_down_is_told_no_more()
    {
        var written = await WriteAsync();
        var run = await CheckAsync();

        Assert.Equal(new CliRun(ExitCode.Clean, "wrote baseline.json: 3 findings\n", ""), written);
        Assert.Equal(new CliRun(ExitCode.Clean, "checked 2 procedures in 3 files: all proven; 3 known in the baseline\n", ""), run);
        Assert.Equal(new CliRun(ExitCode.Clean, "", ""), await CheckAsync("--quiet"));
    }

    [Fact]
    public async Task A_new_finding_fails_the_run()
    {
        await WriteAsync();
        _disk.With("a.proc", Job("a", "// Moved by a line.", Wipe, "unplug cover_bolts"));

        var run = await CheckAsync();

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains(" --> a.proc:6:1\n", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("PRC5108", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_mended_must_go_out_of_the_baseline()
    {
        await WriteAsync();
        _disk.With("a.proc", Job("a", "undo cover_bolts", "remove cover"));

        var stale = await CheckAsync("--fail-on", "warning");
        var shrunk = await WriteAsync();
        var clean = await CheckAsync("--fail-on", "warning");

        Assert.Equal(ExitCode.Findings, stale.Code);
        Assert.StartsWith("warning PRC7031 stale-baseline-entry: PRC5108 is no longer found in a.proc\n --> baseline.json:5:", stale.Output, StringComparison.Ordinal);
        Assert.Equal(new CliRun(ExitCode.Clean, "wrote baseline.json: 2 findings, 1 dropped, 0 added\n", ""), shrunk);
        Assert.Equal(ExitCode.Clean, clean.Code);
    }

    [Fact]
    public async Task It_grows_on_request_alone()
    {
        await WriteAsync();
        var before = _disk.Read(File);
        _disk.With("a.proc", Job("a", Wipe, Grease));

        var refused = await WriteAsync();
        var kept = _disk.Read(File);
        var accepted = await WriteAsync("--accept-new");

        Assert.Equal(ExitCode.Findings, refused.Code);
        Assert.Equal(
            "wrote baseline.json: 3 findings, 0 dropped, 0 added\n"
            + "1 new finding left out: 'procscript check --baseline baseline.json' tells them, --accept-new takes them in\n",
            refused.Output);
        Assert.Equal(before, kept);
        Assert.Equal(new CliRun(ExitCode.Clean, "wrote baseline.json: 4 findings, 0 dropped, 1 added\n", ""), accepted);
        Assert.Equal(ExitCode.Clean, (await CheckAsync()).Code);
    }

    [Fact]
    public async Task An_error_is_left_out_whatever_is_accepted_and_check_never_calls_that_no_findings()
    {
        _disk.With("a.proc", Job("a", Wipe, "remove cover"));

        var written = await WriteAsync();
        var again = await WriteAsync("--accept-new");
        var run = await CheckAsync();

        Assert.Equal(
            new CliRun(ExitCode.Findings, "wrote baseline.json: 3 findings\n1 error left out: an error is never in a baseline, it has to be fixed\n", ""), written);
        Assert.Equal(ExitCode.Findings, again.Code);
        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.StartsWith("error PRC3001 ", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("\n1 error in 3 files; 3 known in the baseline; 1 of 2 procedures proven\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_all_that_is_found_is_allowed_and_not_all_is_proven_the_summary_says_so()
    {
        _disk.With("a.proc", Job("a", "// proc: allow PRC3001 because \"It lies loose.\"", "remove cover")).With("b.proc", Job("b", "undo cover_bolts"));

        var run = await CliRun.AtAsync(_disk.Path, "check", ".");

        Assert.Equal(new CliRun(ExitCode.Clean, "not all proven in 3 files; 1 allowed by comments; 1 of 2 procedures proven\n", ""), run);
    }

    [Fact]
    public async Task Files_that_are_not_named_keep_their_entries_unless_they_are_gone()
    {
        await WriteAsync();

        var part = await CliRun.AtAsync(_disk.Path, "check", "a.proc", "--baseline", File, "--fail-on", "hint");
        System.IO.File.Delete(_disk["b.proc"]);
        var gone = await CliRun.AtAsync(_disk.Path, "check", "a.proc", "--baseline", File, "--fail-on", "hint");

        Assert.Equal(ExitCode.Clean, part.Code);
        Assert.Equal(ExitCode.Findings, gone.Code);
        Assert.Contains(" is no longer found in b.proc\n", gone.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_no_baseline_is_a_wrong_call_and_stays()
    {
        _disk.With(File, "{\n  \"runs\": []\n}\n");

        Assert.Equal(
            "procscript: 'baseline.json' is no baseline: line 2: it lacks something that a baseline has, or has something that a baseline lacks."
            + " Restore it, or write it anew with 'procscript baseline write'.\n",
            (await CheckAsync()).Error);
        Assert.Equal(ExitCode.Usage, (await WriteAsync()).Code);
        Assert.Equal("{\n  \"runs\": []\n}\n", _disk.Read(File));
    }

    [Fact]
    public async Task A_baseline_that_is_not_there_is_a_wrong_call()
    {
        Assert.Equal(
            new CliRun(ExitCode.Usage, "", "procscript: there is no baseline 'baseline.json'; 'procscript baseline write PATH -o baseline.json' writes one.\n"),
            await CheckAsync());
    }

    [Fact]
    public async Task The_current_folder_is_meant_where_none_is_named()
    {
        Assert.Equal("wrote baseline.json: 3 findings\n", (await CliRun.AtAsync(_disk.Path, "baseline", "write", "-o", File)).Output);
        Assert.Equal(["a.proc", "b.proc", File, "machine.proc"], _disk.Files());
    }

    private static string Job(string name, params string[] steps) =>
        $"use \"machine.proc\"\nprocedure {name} \"Job\" on m {{\n  stage \"All\" {{\n{string.Concat(steps.Select(step => step + "\n"))}  }}\n}}\n";

    private Task<CliRun> WriteAsync(params string[] options) => CliRun.AtAsync(_disk.Path, ["baseline", "write", ".", "-o", File, .. options]);

    private Task<CliRun> CheckAsync(params string[] options) => CliRun.AtAsync(_disk.Path, ["check", ".", "--baseline", File, .. options]);
}
