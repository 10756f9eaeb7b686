namespace ProcScript.LanguageServer.Workspaces;

/// <summary>
/// The analysis of one moment, on its way or done. It begins at once. When a newer one begins it is given up, but not while a request
/// waits for it: whoever asked about a text gets an answer about that text.
/// </summary>
internal sealed class AnalysisRun
{
    private readonly CancellationTokenSource _cancellation = new();
    private readonly TaskCompletionSource<LibraryAnalysis> _bound = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Lock _lock = new();
    private int _waiting;
    private bool _isOld;

    /// <summary>Begins.</summary>
    /// <param name="analyse">The whole of it; it tells when the text is bound.</param>
    public AnalysisRun(Func<Action<LibraryAnalysis>, CancellationToken, LibraryAnalysis> analyse) => Judged = Task.Run(() =>
    {
        try
        {
            return analyse(analysis => _bound.TrySetResult(analysis), _cancellation.Token);
        }
        catch (OperationCanceledException)
        {
            _bound.TrySetCanceled(_cancellation.Token);
            throw;
        }
        catch (Exception fault)
        {
            _bound.TrySetException(fault);
            throw;
        }
    });

    /// <summary>What the text says, before it is judged.</summary>
    public Task<LibraryAnalysis> Bound => _bound.Task;

    /// <summary>The outcome.</summary>
    public Task<LibraryAnalysis> Judged { get; }

    /// <summary>Waits for the outcome.</summary>
    public async Task<LibraryAnalysis> WaitAsync(CancellationToken cancellation)
    {
        using var hold = Hold();
        return await Judged.WaitAsync(cancellation).ConfigureAwait(false);
    }

    /// <summary>Keeps it from being given up, up to the end of who asks.</summary>
    public IDisposable Hold()
    {
        lock (_lock)
        {
            _waiting++;
        }

        return new Held(this);
    }

    /// <summary>A newer one has begun.</summary>
    public void Replace()
    {
        lock (_lock)
        {
            _isOld = true;
            CancelIfUnwanted();
        }
    }

    private void LetGo()
    {
        lock (_lock)
        {
            _waiting--;
            CancelIfUnwanted();
        }
    }

    private void CancelIfUnwanted()
    {
        if (_isOld && _waiting == 0)
        {
            _cancellation.Cancel();
        }
    }

    private sealed class Held(AnalysisRun run) : IDisposable
    {
        public void Dispose() => run.LetGo();
    }
}
