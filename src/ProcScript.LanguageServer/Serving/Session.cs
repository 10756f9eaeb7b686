using ProcScript.LanguageServer.Checking;
using ProcScript.LanguageServer.Features;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Serving;

/// <summary>The time with one client, from its first message to its last.</summary>
internal sealed class Session : IDisposable
{
    private readonly Connection _connection;
    private readonly IServerHost _host;
    private readonly Lifecycle _lifecycle = new();
    private readonly CancellationTokenSource _end = new();
    private readonly TaskCompletionSource _parentGone = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly MethodTable _methods;

    /// <summary>Prepares to serve.</summary>
    public Session(Connection connection, IServerHost host)
    {
        _connection = connection;
        _host = host;
        _methods = new MethodTable(connection, _lifecycle);
        _methods.First<InitializeParams, InitializeResult>("initialize", Initialize);
        connection.Add("shutdown", ShutDown);
        connection.Add("exit", _lifecycle.Exit);
    }

    /// <summary>Serves until the client leaves or dies.</summary>
    /// <returns>Whether the client asked for the end before.</returns>
    public async Task<bool> RunAsync(CancellationToken stop)
    {
        using var stopped = stop.Register(_lifecycle.Exit);
        _connection.Listen();
        await Task.WhenAny(_lifecycle.Exited, _connection.Completion, _parentGone.Task);
        await _end.CancelAsync();
        stop.ThrowIfCancellationRequested();
        return _lifecycle.IsShutDown;
    }

    /// <inheritdoc/>
    public void Dispose() => _end.Dispose();

    private InitializeResult Initialize(InitializeParams parameters)
    {
        var client = new ClientProfile(parameters);
        if (parameters.ProcessId is { } process)
        {
            _ = WatchAsync(process);
        }

        var writer = new DiagnosticWriter(new RulePageFiles(_host), client);
        var workspace = new Workspace(
            _host, client.Encoding, new QuietCollections(new FindingPublisher(_connection, writer, new RefreshRequests(_connection, writer, client), isAsked: client.PullsDiagnostics)));
        DocumentMethods.Add(_methods, _connection, client, workspace);
        if (client.PullsDiagnostics)
        {
            DiagnosticMethods.Add(_methods, workspace, writer);
        }

        var edits = new EditWriter(client);
        NavigationMethods.Add(_methods, workspace);
        RenameMethods.Add(_methods, workspace, edits);
        FileRenameMethods.Add(_methods, workspace, edits);
        SymbolMethods.Add(_methods, workspace, client);
        LayoutMethods.Add(_methods, workspace, line => _connection.Notify("window/logMessage", new LogMessageParams(LogMessageParams.Info, line)));
        LinkedEditingMethods.Add(_methods, workspace);
        HoverMethods.Add(_methods, workspace);
        CompletionMethods.Add(_methods, workspace, client);
        CallMethods.Add(_methods, workspace);
        MarkingMethods.Add(_methods, workspace);
        HintMethods.Add(_methods, workspace);
        LensMethods.Add(_methods, workspace);
        new ViewMethods(workspace, _host, _connection, client).Add(_methods);
        new CodeActionMethods(edits, writer, new RefactoringActions(edits)).Add(_methods, workspace);
        workspace.AddFolders(client.Folders);
        return new InitializeResult(Capabilities.For(client), new ServerInfo("procscript", _host.Version));
    }

    private object? ShutDown()
    {
        _lifecycle.ShutDown();
        return null;
    }

    /// <summary>A client that dies without a word takes the server along.</summary>
    private async Task WatchAsync(int process)
    {
        try
        {
            await _host.WaitForProcessAsync(process, _end.Token).ConfigureAwait(false);
            _parentGone.TrySetResult();
        }
        catch (OperationCanceledException)
        {
            // The session ended first.
        }
    }
}
