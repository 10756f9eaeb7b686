using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace ProcScript.LanguageServer.Serving;

/// <summary>How far a session is: not begun, serving, told to end, ended.</summary>
internal sealed class Lifecycle
{
    private const int ServerNotInitialized = -32002;

    private readonly TaskCompletionSource _exit = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private bool _isBegun;

    /// <summary>Whether the client asked for the end.</summary>
    public bool IsShutDown { get; private set; }

    /// <summary>Whether requests are granted.</summary>
    public bool IsServing => _isBegun && !IsShutDown;

    /// <summary>Ends when the client says so.</summary>
    public Task Exited => _exit.Task;

    /// <summary>Begins.</summary>
    public void Begin()
    {
        if (_isBegun)
        {
            throw new LocalRpcException("The server is initialized already.") { ErrorCode = (int)JsonRpcErrorCode.InvalidRequest };
        }

        _isBegun = true;
    }

    /// <summary>Refuses what comes before the begin or after the end.</summary>
    public void Demand()
    {
        if (!_isBegun)
        {
            throw new LocalRpcException("The server is not initialized.") { ErrorCode = ServerNotInitialized };
        }

        if (IsShutDown)
        {
            throw new LocalRpcException("The server is shut down.") { ErrorCode = (int)JsonRpcErrorCode.InvalidRequest };
        }
    }

    /// <summary>The client asks for the end.</summary>
    public void ShutDown()
    {
        Demand();
        IsShutDown = true;
    }

    /// <summary>The client leaves.</summary>
    public void Exit() => _exit.TrySetResult();
}
