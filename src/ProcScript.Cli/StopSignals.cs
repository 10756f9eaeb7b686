using System.Runtime.InteropServices;

namespace ProcScript.Cli;

/// <summary>Turns Ctrl-C and the system's request to end into a cancellation, so that nothing is left half-written.</summary>
internal sealed class StopSignals : IDisposable
{
    private readonly CancellationTokenSource _source = new();
    private readonly PosixSignalRegistration _interrupt;
    private readonly PosixSignalRegistration _terminate;

    /// <summary>Listens until disposed.</summary>
    public StopSignals()
    {
        _interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        _terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
    }

    /// <summary>Cancelled by the first signal.</summary>
    public CancellationToken Token => _source.Token;

    /// <summary>The exit code that the signal asks for.</summary>
    public ExitCode Code { get; private set; } = ExitCode.Interrupted;

    /// <inheritdoc/>
    public void Dispose()
    {
        _interrupt.Dispose();
        _terminate.Dispose();
        _source.Dispose();
    }

    private void Stop(PosixSignalContext context)
    {
        // Whoever asks a second time does not want to wait for a clean end.
        context.Cancel = !_source.IsCancellationRequested;
        Code = context.Signal == PosixSignal.SIGTERM ? ExitCode.Terminated : ExitCode.Interrupted;
        _source.Cancel();
    }
}
