using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Versions;

public sealed class SinceTests : IDisposable
{
    private readonly GitFolder _git = new();

    public SinceTests()
    {
        _git.Disk
            .With("machine.proc", Sample.Machine)
            .With("jobs/cover.proc", Job("cover_off", "undo cover_bolts\nremove cover"))
            .With("jobs/pump.proc", "use \"../machine.proc\"\nuse \"cover.proc\"\nprocedure pump_out \"P\" on m { goal remove pump  stage \"A\" { isolate battery }\ndo cover_off\nstage \"B\" { unplug pump_plug  undo pump_bolts  remove pump }\nrefit { check \"It turns.\" needs battery live } }\n")
            .With("jobs/pläne \"neu\".proc", Job("other", "undo cover_bolts\nremove cover"));
        _git.Commit();
    }

    public void Dispose() => _git.Dispose();

    [Fact]
    public async Task Nothing_changed_is_nothing_checked()
    {
        Assert.Equal(
            new CliRun(ExitCode.Clean, "checked 0 files: no findings; 3 procedures left, which no change has touched\n", ""),
            await CheckAsync("HEAD"));
    }

    [Fact]
    public async Task A_changed_file_is_checked_with_all_that_uses_it()
    {
        Append("jobs/cover.proc", "// A word more.\n");
        Assert.Equal("checked 2 procedures in 2 files: all proven; 1 procedure left, which no change has touched\n", (await CheckAsync("HEAD")).Output);

        Append("machine.proc", "// A word more.\n");
        Assert.Equal("checked 3 procedures in 4 files: all proven; 0 procedures left, which no change has touched\n", (await CheckAsync("HEAD")).Output);
    }

    [Fact]
    public async Task A_shared_catalog_in_a_submodule_is_looked_into()
    {
        using GitFolder shared = new();
        shared.Disk.With("tools.proc", "tool lever \"lever\"\n").With("other.proc", "tool bar \"bar\"\n");
        shared.Commit();
        _git.Git("-c", "protocol.file.allow=always", "submodule", "--quiet", "add", shared.Disk.Path, "catalog");
        _git.Disk.With("user.proc", "use \"catalog/tools.proc\"\nclip pin \"pin\" { tool lever }\n");
        var start = _git.Commit();
        const string nothing = "checked 0 files: no findings; 3 procedures left, which no change has touched\n";
        Assert.Equal(nothing, (await CheckAsync(start)).Output);

        _git.Disk.With("catalog/tools.proc", "tool hook \"hook\"\n");
        Assert.Contains("--> user.proc:2:", (await CheckAsync(start)).Output, StringComparison.Ordinal);
        _git.Git("-C", "catalog", "commit", "-qam", "x");
        Assert.Equal(ExitCode.Findings, (await CheckAsync(start)).Code);
        Assert.Equal(ExitCode.Findings, (await CheckAsync("HEAD")).Code);
        _git.Commit();
        Assert.Equal(ExitCode.Findings, (await CheckAsync(start)).Code);
        Assert.Equal(nothing, (await CheckAsync("HEAD")).Output);

        _git.Disk.With("catalog/new.proc", "tool hook \"hook\" }\n");
        Assert.Contains("--> catalog/new.proc:1", (await CheckAsync("HEAD")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_repository_within_that_Git_does_not_keep_counts_as_changed()
    {
        _git.Disk.With("catalog/tools.proc", "tool hook \"hook\" }\n");
        _git.Git("init", "-q", "catalog");

        Assert.Contains("--> catalog/tools.proc:1", (await CheckAsync("HEAD")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Findings_in_what_nothing_has_touched_are_not_told()
    {
        _git.Disk.With("jobs/old.proc", Job("old", "remove cover"));
        _git.Commit();
        _git.Disk.With("jobs/new.proc", Job("new", "remove cover"));

        var run = await CheckAsync("HEAD");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains("--> jobs/new.proc:", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("old.proc", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("1 error in 1 file; 0 of 1 procedure proven; 4 procedures left, which no change has touched\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_users_of_a_deleted_or_renamed_file_are_checked()
    {
        File.Move(_git.Disk["jobs/cover.proc"], _git.Disk["jobs/lid.proc"]);
        _git.Git("add", "-A");

        var run = await CheckAsync("HEAD");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains("--> jobs/pump.proc:2:5", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("1 procedure left, which no change has touched\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_with_blanks_quotes_and_other_letters_are_names()
    {
        Append("jobs/pläne \"neu\".proc", "// A word more.\n");

        Assert.StartsWith("checked 1 procedure in 1 file: all proven", (await CheckAsync("HEAD")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_library_in_a_folder_of_the_repository_has_its_own_paths()
    {
        _git.Disk.With("jobs/procscript.json", "{}").With("jobs/alone.proc", Sample.Text);
        _git.Commit();
        _git.Disk.With("jobs/alone.proc", Sample.Text + "// More.\n").With("top.proc", "}");

        var run = await CliRun.AtAsync(_git.Disk.Path, "check", "jobs/alone.proc", "--since", "HEAD");

        Assert.Equal(new CliRun(ExitCode.Clean, "checked 1 procedure in 1 file: all proven; 0 procedures left, which no change has touched\n", ""), run);
    }

    [Fact]
    public async Task Changed_settings_have_everything_checked()
    {
        _git.Disk.With("procscript.json", "{}");

        Assert.Equal("checked 3 procedures in 4 files: all proven\n", (await CheckAsync("HEAD")).Output);
    }

    [Fact]
    public async Task What_Git_cannot_tell_is_said()
    {
        Assert.Equal(
            new CliRun(ExitCode.Usage, "", "procscript: there is no revision 'no-such': name a branch, a tag or a commit of this repository.\n"),
            await CheckAsync("no-such"));
        Assert.Equal(ExitCode.Usage, (await CheckAsync("--all")).Code);
        Assert.StartsWith("procscript: the standard input has no revisions", (await CliRun.AtAsync(_git.Disk.Path, "check", "-", "--since", "HEAD")).Error, StringComparison.Ordinal);

        using TemporaryFolder bare = new();
        bare.With("a.proc", Sample.Text);
        var outside = await CliRun.AtAsync(bare.Path, "check", ".", "--since", "HEAD");
        Assert.Equal(new CliRun(ExitCode.Usage, "", $"procscript: the revisions of '{bare.Path}' are not known: there is no Git repository in it or above it.\n"), outside);
    }

    [Fact]
    public async Task A_shallow_clone_says_that_it_is_one()
    {
        var first = _git.Git("rev-parse", "HEAD").Trim();
        _git.Commit("two");
        using TemporaryFolder clone = new();
        _git.Git("clone", "-q", "--depth", "1", "file://" + _git.Disk.Path, clone["c"]);

        var run = await CliRun.AtAsync(clone["c"], "check", ".", "--since", first);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("in this clone, which is shallow; 'git fetch --unshallow' gets the rest", run.Error, StringComparison.Ordinal);
    }

    private static string Job(string name, string steps) => $"use \"../machine.proc\"\nprocedure {name} \"P\" on m {{ goal remove cover stage \"All\" {{\n{steps}\n}} }}\n";

    private Task<CliRun> CheckAsync(string revision) => CliRun.AtAsync(_git.Disk.Path, "check", ".", "--since", revision);

    private void Append(string path, string text) => _git.Disk.With(path, _git.Disk.Read(path) + text);
}
