using System.Diagnostics;
using System.Globalization;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>A command that writes files, run as a process of its own in a folder, to be stopped at any moment.</summary>
internal sealed class WritingRun : IDisposable
{
    private const string ProgramVariable = "PROCSCRIPT_PROGRAM";

    private readonly Process _process;

    private WritingRun(Process process) => _process = process;

    /// <summary>Starts the program that the tests were built with, or the one that the environment variable names.</summary>
    public static WritingRun Start(string folder, params string[] arguments)
    {
        var program = Environment.GetEnvironmentVariable(ProgramVariable);
        ProcessStartInfo start = program is null
            ? new("dotnet", [Path.Combine(AppContext.BaseDirectory, "procscript.dll"), .. arguments])
            : new(program, arguments);
        start.WorkingDirectory = folder;
        start.RedirectStandardOutput = true;
        start.RedirectStandardError = true;
        var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        return new WritingRun(process);
    }

    /// <summary>Sends a signal.</summary>
    public void Signal(string signal)
    {
        using var kill = Process.Start("kill", [$"-{signal}", _process.Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

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
