using System.Diagnostics;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>Where <c>-o</c> leads: to a file, the output, or what only has a place among files; never over an input.</summary>
public sealed class OutputFileTests : IDisposable
{
    private readonly TemporaryFolder _disk = new TemporaryFolder().With("a.proc", Sample.Machine).With("b.proc", "tool lever \"lever\"\n");

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task A_pipe_is_written_to_and_stays_a_pipe()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "there are no named pipes in the file system");
        Shell("mkfifo p");
        using var reader = Process.Start(new ProcessStartInfo("sh", ["-c", "cat p > got"]) { WorkingDirectory = _disk.Path })!;

        var run = await CliRun.AtAsync(_disk.Path, "check", "a.proc", "--format", "json", "-o", "p");
        await reader.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.StartsWith("{", _disk.Read("got"), StringComparison.Ordinal);
        Shell("test -p p");
    }

    [Theory]
    [InlineData("-")]
    [InlineData("/dev/stdout")]
    [InlineData("/dev/fd/1")]
    public async Task The_output_is_no_file_of_that_name(string typed)
    {
        Assert.SkipWhen(typed != "-" && OperatingSystem.IsWindows(), "there are no devices in the file system");
        var plain = await CliRun.AtAsync(_disk.Path, "model", "a.proc");

        Assert.Equal(plain, await CliRun.AtAsync(_disk.Path, "model", "a.proc", "-o", typed));
        Assert.StartsWith("{", (await CliRun.AtAsync(_disk.Path, "check", "a.proc", "--format", "json", "-o", typed)).Output, StringComparison.Ordinal);
        var baseline = await CliRun.AtAsync(_disk.Path, "baseline", "write", "a.proc", "-o", typed);
        Assert.StartsWith("{", baseline.Output, StringComparison.Ordinal);
        Assert.StartsWith("wrote ", baseline.Error, StringComparison.Ordinal);
        Assert.Equal(["a.proc", "b.proc"], _disk.Files());
    }

    [Fact]
    public async Task What_is_written_to_nowhere_is_no_fault()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "there are no devices in the file system");
        var run = await CliRun.AtAsync(_disk.Path, "check", "a.proc", "-o", "/dev/null");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Shell("test -c /dev/null");
    }

    [Theory]
    [InlineData("check", "b.proc")]
    [InlineData("check", "./x/../b.proc")]
    [InlineData("check", "link")]
    [InlineData("check", "procscript.json")]
    [InlineData("model", "b.proc")]
    [InlineData("baseline write", "b.proc")]
    [InlineData("texts export --language de", "b.proc")]
    public async Task An_input_is_not_written_over(string verb, string output)
    {
        _disk.With("procscript.json", "{}");
        File.CreateSymbolicLink(_disk["link"], _disk["b.proc"]);
        var before = _disk.Files().Select(_disk.Read).ToList();

        var run = await CliRun.AtAsync(_disk.Path, [.. verb.Split(' '), "a.proc", "b.proc", "-o", output]);

        Assert.Equal(
            new CliRun(ExitCode.Usage, "", $"procscript: cannot write '{output}': it is one of the files that are read. Nothing was written; name another file after -o.\n"),
            run);
        Assert.Equal(before, _disk.Files().Select(_disk.Read));
    }

    [Fact]
    public async Task The_baseline_that_is_read_is_not_written_over()
    {
        await CliRun.AtAsync(_disk.Path, "baseline", "write", "a.proc", "-o", "known.json");
        var known = _disk.Read("known.json");

        var run = await CliRun.AtAsync(_disk.Path, "check", "a.proc", "--baseline", "known.json", "-o", "./known.json");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Equal(known, _disk.Read("known.json"));
    }

    private void Shell(string command)
    {
        using var process = Process.Start(new ProcessStartInfo("sh", ["-c", command]) { WorkingDirectory = _disk.Path })!;
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }
}
