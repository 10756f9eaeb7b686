namespace ProcScript.Cli.Watching;

/// <summary>
/// Waits until files change. The system's notices only wake it: whether something has changed, the files themselves tell, so that editors
/// may write as they like, and where there are no notices it looks by itself.
/// </summary>
internal sealed class FolderWatch : IDisposable
{
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(60);
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(2);

    private readonly string _root;
    private readonly string? _other;
    private readonly SemaphoreSlim _notice = new(0, 1);
    private readonly List<FileSystemWatcher> _watchers = [];
    private string _last;

    /// <summary>Begins to watch.</summary>
    /// <param name="root">The library's root folder.</param>
    /// <param name="other">Another folder, such as one of templates; null where there is none.</param>
    public FolderWatch(string root, string? other)
    {
        (_root, _other) = (root, other);
        foreach (var folder in new[] { root, other }.OfType<string>().Distinct(StringComparer.Ordinal))
        {
            TryListen(folder);
        }

        _last = FolderStamp.Of(root, other);
    }

    /// <summary>Waits for a change since the last one that it told of, and until all is quiet again.</summary>
    public async Task ChangedAsync(CancellationToken stop)
    {
        while (FolderStamp.Of(_root, _other) == _last)
        {
            await _notice.WaitAsync(Look, stop);
        }

        // A save is often several changes, and a checkout many: one run is for all of them.
        var start = TimeProvider.System.GetTimestamp();
        string now;
        do
        {
            now = FolderStamp.Of(_root, _other);
            await Task.Delay(Quiet, stop);
        }
        while (FolderStamp.Of(_root, _other) != now && TimeProvider.System.GetElapsedTime(start) < Longest);
        _last = now;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _watchers.ForEach(watcher => watcher.Dispose());
        _notice.Dispose();
    }

    private void TryListen(string folder)
    {
        FileSystemWatcher? watcher = null;
        try
        {
            watcher = new FileSystemWatcher(folder) { IncludeSubdirectories = true };
            watcher.Changed += Wake;
            watcher.Created += Wake;
            watcher.Deleted += Wake;
            watcher.Renamed += Wake;
            watcher.Error += Wake;
            watcher.EnableRaisingEvents = true;
            _watchers.Add(watcher);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException or PlatformNotSupportedException)
        {
            // The system has no notices left, or the folder's has none: it looks by itself.
            watcher?.Dispose();
        }
    }

    private void Wake(object sender, EventArgs notice)
    {
        try
        {
            _notice.Release();
        }
        catch (Exception failure) when (failure is SemaphoreFullException or ObjectDisposedException)
        {
            // It is awake already, or has ended.
        }
    }
}
