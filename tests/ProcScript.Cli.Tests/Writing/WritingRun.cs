using System.Diagnostics;
using System.Globalization;
using ProcScript.Cli.Tests.Processes;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>A command that writes files, run as a process of its own in a folder, to be stopped at any moment.</summary>
internal sealed class WritingRun : IDisposable
{
    private readonly Process _process;

    private WritingRun(Process process) => _process = process;

    /// <summary>Starts the program that the tests were built with, or the one that the environment variable names.</summary>
    public static WritingRun Start(string folder, params string[] arguments)
    {
        var start = TestedProgram.Start(arguments);
        start.WorkingDirectory = folder;
        start.RedirectStandardOutput = true;
        start.RedirectStandardError = true;
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        return new WritingRun(process);
    }

    /// <summary>What the files are called that it has begun and not named yet.</summary>
    public string TemporaryFiles => string.Create(CultureInfo.InvariantCulture, $"*-{_process.Id}-*.tmp");

    /// <summary>Sends a signal.</summary>
    public void Signal(StopSignal signal) => Signals.Send(_process, signal);

    /// <summary>Waits for the end: the exit code and what was said on the error stream.</summary>
    public async Task<(int Code, string Error)> EndAsync()
    {
        using var hang = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        hang.CancelAfter(TimeSpan.FromMinutes(2));
        var error = await _process.StandardError.ReadToEndAsync(hang.Token);
        await _process.WaitForExitAsync(hang.Token);
        return (_process.ExitCode, error);
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.Dispose();
    }
}
