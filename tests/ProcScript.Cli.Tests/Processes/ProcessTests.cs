using System.Diagnostics;
using System.Text;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Processes;

/// <summary>What only a process of its own can show: streams, encodings, signals.</summary>
[Slow]
public sealed class ProcessTests : IDisposable
{
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(60);

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task Output_is_UTF8_without_a_mark_whatever_the_locale()
    {
        _disk.With("a.proc", Sample.Steps("remove cover"));
        using var process = Start(["check", "a.proc"], ("LC_ALL", "C"), ("LANG", "C"));

        var bytes = new MemoryStream();
        await process.StandardOutput.BaseStream.CopyToAsync(bytes, TestContext.Current.CancellationToken);
        var code = await EndAsync(process);

        Assert.Equal(1, code);
        Assert.Contains("4 × M8 bolt", Encoding.UTF8.GetString(bytes.ToArray()), StringComparison.Ordinal);
        Assert.StartsWith("error PRC3001 ", Encoding.UTF8.GetString(bytes.ToArray()), StringComparison.Ordinal);
        Assert.Equal("", await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_pipe_is_read_and_is_no_terminal()
    {
        using var process = Start(["check", "-"]);
        await process.StandardInput.WriteAsync("}");
        process.StandardInput.Close();

        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);

        Assert.Equal(1, await EndAsync(process));
        Assert.Contains(" --> <stdin>:1:1\n", output, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001B", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check - <&-", 2, "")]
    [InlineData("format - <&-", 2, "procscript: cannot read '<stdin>': The standard input is closed; hand a text in, as in 'procscript check - < FILE'.\n")]
    [InlineData("check a.proc >&-", 2, "procscript: cannot write the output: it is closed.\n")]
    [InlineData("check a.proc 2>&-", 1, "")]
    public async Task A_stream_that_is_closed_is_told_and_not_waited_for(string command, int code, string error)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "only here it is known whether a stream was closed");
        _disk.With("a.proc", "}\n");
        var program = TestedProgram.Start([]);
        using var process = Process.Start(new ProcessStartInfo(
            "sh", ["-c", $"exec {string.Join(' ', program.ArgumentList.Prepend(program.FileName).Select(one => $"'{one}'"))} {command}"])
        {
            WorkingDirectory = _disk.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);

        Assert.Equal(error, await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        Assert.Equal(code, await EndAsync(process));
        Assert.DoesNotContain("internal error", await output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reader_that_goes_away_is_no_fault()
    {
        _disk.With("a.proc", string.Concat(Enumerable.Repeat("}\n", 20_000)));
        using var process = Start(["check", "a.proc"]);

        await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
        process.StandardOutput.Close();
        var code = await EndAsync(process);

        Assert.NotEqual(3, code);
        Assert.DoesNotContain("   at ", await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ctrl_C_ends_it_with_130_and_without_a_word()
    {
        Signals.SkipWithout();
        // It waits for its input for ever, unless it is stopped.
        using var process = Start(["check", "-"]);
        await Task.Delay(TimeSpan.FromSeconds(1), TestContext.Current.CancellationToken);

        Signals.Send(process, StopSignal.Interrupt);

        Assert.Equal(130, await EndAsync(process));
        Assert.Equal("", await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
        Assert.Equal("", await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_build_from_a_process_writes_a_pack()
    {
        _disk.With("a.proc", Sample.Text);
        using var process = Start(["build", "a.proc", "-o", "packs"]);

        Assert.Equal(0, await EndAsync(process));
        Assert.Contains("packs/p/cards.html", _disk.Files());
    }

    [Fact]
    public async Task Without_Git_it_says_that_it_needs_it()
    {
        _disk.With("a.proc", Sample.Text);
        using var process = Start(["check", "a.proc", "--since", "HEAD"], ("PATH", _disk.Path));

        Assert.Equal(2, await EndAsync(process));
        Assert.Equal(
            "procscript: Git is needed for that, and there is no 'git' on the PATH; install Git, or run it where Git is.\n",
            await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
    }

    private Process Start(string[] arguments, params (string Name, string Value)[] environment)
    {
        var start = TestedProgram.Start(arguments);
        start.WorkingDirectory = _disk.Path;
        start.RedirectStandardInput = true;
        start.RedirectStandardOutput = true;
        start.RedirectStandardError = true;
        start.StandardOutputEncoding = Encoding.UTF8;
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }

    private static async Task<int> EndAsync(Process process)
    {
        using CancellationTokenSource hang = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        hang.CancelAfter(Hang);
        try
        {
            await process.WaitForExitAsync(hang.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill();
            throw;
        }

        return process.ExitCode;
    }
}
