using System.Diagnostics;

namespace ProcScript.Cli.Tests.Sources;

/// <summary>A library is read and written inside its root alone, and only files are.</summary>
public sealed class LinkTests : IDisposable
{
    private const string Secret = "TOKEN=abc  tool   lever \"lever\"\n";

    private readonly TemporaryFolder _disk = new TemporaryFolder()
        .With("outside/secret.txt", Secret)
        .With("lib/procscript.json", "{}")
        .With("lib/shop.proc", "tool lever \"lever\"\n");

    public void Dispose() => _disk.Dispose();

    [Theory]
    [InlineData("check")]
    [InlineData("build -o packs")]
    [InlineData("format")]
    [InlineData("fix")]
    [InlineData("format --diff")]
    [InlineData("model")]
    public async Task A_link_out_of_the_library_is_refused_and_told(string verb)
    {
        File.CreateSymbolicLink(_disk["lib/x.proc"], _disk["outside/secret.txt"]);

        var run = await CliRun.AtAsync(_disk["lib"], [.. verb.Split(' '), "."]);

        Assert.Equal(ExitCode.Usage, run.AssertNoBug().Code);
        Assert.DoesNotContain("TOKEN", run.Output + run.Error, StringComparison.Ordinal);
        Assert.Contains("link", run.Output + run.Error, StringComparison.Ordinal);
        Assert.Equal(Secret, _disk.Read("outside/secret.txt"));
    }

    [Fact]
    public async Task A_use_through_a_linked_folder_is_refused()
    {
        Directory.CreateSymbolicLink(_disk["lib/far"], _disk["outside"]);
        _disk.With("outside/far.proc", "tool bar \"bar\"\n").With("lib/y.proc", "use \"far/far.proc\"\n");

        var run = await CliRun.AtAsync(_disk["lib"], "check", "y.proc");

        Assert.StartsWith("error PRC1107 unreadable-file: `far/far.proc` lies outside of the library: a link leads there", run.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Findings, run.Code);
    }

    [Fact]
    public async Task A_link_within_the_library_and_a_library_that_a_link_leads_to_are_read()
    {
        File.CreateSymbolicLink(_disk["lib/same.proc"], _disk["lib/shop.proc"]);
        Directory.CreateSymbolicLink(_disk["here"], _disk["lib"]);

        Assert.Equal(new CliRun(ExitCode.Clean, "checked 1 file: no findings\n", ""), await CliRun.AtAsync(_disk["lib"], "check", "same.proc"));
        Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(_disk["here"], "check", "shop.proc")).Code);
    }

    [Fact]
    public async Task A_pipe_among_the_sources_is_refused_and_not_waited_for()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "there are no named pipes in the file system");
        using (var make = Process.Start("mkfifo", [_disk["lib/pipe.proc"]]))
        {
            await make.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        var run = await CliRun.AtAsync(_disk["lib"], "check", ".");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("`pipe.proc` is a device, a pipe or a socket, and no file", run.Output, StringComparison.Ordinal);
        Assert.Equal(
            new CliRun(ExitCode.Usage, "", "procscript: cannot read 'pipe.proc': it is a device, a pipe or a socket, and no file; use '-' for the standard input.\n"),
            await CliRun.AtAsync(_disk["lib"], "format", "."));
    }
}
