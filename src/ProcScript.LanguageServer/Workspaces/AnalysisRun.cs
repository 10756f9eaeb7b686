namespace ProcScript.LanguageServer.Workspaces;

/// <summary>
/// The analysis of one moment, on its way or done. It begins at once. When a newer one begins it is given up, but not while a request
/// waits for it: whoever asked about a text gets an answer about that text.
/// </summary>
internal sealed class AnalysisRun
{
    private readonly CancellationTokenSource _cancellation = new();
    private readonly Lock _lock = new();
    private int _waiting;
    private bool _isOld;

    /// <summary>Begins.</summary>
    public AnalysisRun(Func<CancellationToken, LibraryAnalysis> analyse) => Task = System.Threading.Tasks.Task.Run(() => analyse(_cancellation.Token));

    /// <summary>The outcome.</summary>
    public Task<LibraryAnalysis> Task { get; }

    /// <summary>Waits for the outcome.</summary>
    public async Task<LibraryAnalysis> WaitAsync(CancellationToken cancellation)
    {
        lock (_lock)
        {
            _waiting++;
        }

        try
        {
            return await Task.WaitAsync(cancellation).ConfigureAwait(false);
        }
        finally
        {
            lock (_lock)
            {
                _waiting--;
                CancelIfUnwanted();
            }
        }
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

    private void CancelIfUnwanted()
    {
        if (_isOld && _waiting == 0)
        {
            _cancellation.Cancel();
        }
    }
}
