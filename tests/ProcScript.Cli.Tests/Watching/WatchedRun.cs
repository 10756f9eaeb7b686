using System.Diagnostics;
using ProcScript.Cli.Tests.Processes;

namespace ProcScript.Cli.Tests.Watching;

/// <summary>A run that goes on until it is stopped, as a process of its own.</summary>
internal sealed class WatchedRun : IDisposable
{
    private const string EndOfRound = "watching for changes";

    private readonly Process _process;
    private readonly CancellationTokenSource _hang = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);

    private WatchedRun(Process process)
    {
        _process = process;
        _hang.CancelAfter(TimeSpan.FromMinutes(5));
    }

    /// <summary>Starts the program that the tests were built with, or the one that the environment variable names.</summary>
    public static WatchedRun Start(string folder, params string[] arguments)
    {
        var start = TestedProgram.Start(arguments);
        start.WorkingDirectory = folder;
        start.RedirectStandardOutput = true;
        start.RedirectStandardError = true;
        return new WatchedRun(Process.Start(start)!);
    }

    /// <summary>Waits for the end of a round and gives its last line.</summary>
    public async Task<string> RoundAsync()
    {
        var last = "";
        while (await _process.StandardOutput.ReadLineAsync(_hang.Token) is { } line)
        {
            if (line.StartsWith(EndOfRound, StringComparison.Ordinal))
            {
                return last;
            }

            last = line;
        }

        throw new InvalidOperationException($"It ended within a round, after '{last}': {await _process.StandardError.ReadToEndAsync(_hang.Token)}");
    }

    /// <summary>Waits for a line that starts so.</summary>
    public async Task<string> LineAsync(string start)
    {
        while (await _process.StandardOutput.ReadLineAsync(_hang.Token) is { } line)
        {
            if (line.StartsWith(start, StringComparison.Ordinal))
            {
                return line;
            }
        }

        throw new InvalidOperationException($"There was no line '{start}…': {await _process.StandardError.ReadToEndAsync(_hang.Token)}");
    }

    /// <summary>Ends it as Ctrl-C does: the exit code, and what was said on the error stream.</summary>
    public async Task<(int Code, string Error)> StopAsync()
    {
        Signals.Send(_process, StopSignal.Interrupt);
        var error = await _process.StandardError.ReadToEndAsync(_hang.Token);
        await _process.WaitForExitAsync(_hang.Token);
        return (_process.ExitCode, error);
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.Dispose();
        _hang.Dispose();
    }
}
