using System.Collections.Concurrent;
using System.Threading.Channels;
using ProcScript.Floor.Documents;

namespace ProcScript.Floor.Desk;

/// <summary>Tells whoever watches that a job has changed. Who was away for a moment is told what they have missed.</summary>
public sealed class ChangeFeed
{
    private const int MostKept = 2_000;
    private const int MostWaiting = 500;

    private readonly Lock _lock = new();
    private readonly Queue<Told> _kept = new();
    private readonly ConcurrentDictionary<Channel<Told>, bool> _watchers = new();
    // Another start of the server counts anew: its numbers must not be taken for those of this one.
    private readonly string _start = Guid.NewGuid().ToString("N")[..8];
    private long _last;

    /// <summary>Tells of a change.</summary>
    /// <param name="job">The job.</param>
    /// <param name="events">How many events its journal has now.</param>
    public void Tell(string job, int events)
    {
        lock (_lock)
        {
            var told = new Told($"{_start}-{++_last}", new JobChange(job, events));
            _kept.Enqueue(told);
            if (_kept.Count > MostKept)
            {
                _kept.Dequeue();
            }

            foreach (var watcher in _watchers.Keys.Where(watcher => !watcher.Writer.TryWrite(told)))
            {
                // Too slow: it is let go, comes again and asks for all.
                watcher.Writer.TryComplete();
                _watchers.TryRemove(watcher, out _);
            }
        }
    }

    /// <summary>Watches.</summary>
    /// <param name="since">The last that was heard; null where nothing was.</param>
    public Watch Begin(string? since)
    {
        var channel = Channel.CreateBounded<Told>(new BoundedChannelOptions(MostWaiting + MostKept) { SingleReader = true, FullMode = BoundedChannelFullMode.Wait });
        lock (_lock)
        {
            var missed = since is null ? null : _kept.SkipWhile(told => told.Id != since).ToList();
            var isWhole = since == $"{_start}-{_last}" || missed is [_, ..];
            foreach (var told in isWhole ? missed!.Skip(1) : [new Told($"{_start}-{_last}", new JobChange("", 0))])
            {
                channel.Writer.TryWrite(told);
            }

            _watchers[channel] = true;
        }

        return new Watch(channel.Reader, () => _watchers.TryRemove(channel, out _));
    }

    /// <summary>A change with its identity.</summary>
    /// <param name="Id">By which it is known that it was heard.</param>
    /// <param name="Change">What has changed.</param>
    public sealed record Told(string Id, JobChange Change);

    /// <summary>Somebody who watches.</summary>
    /// <param name="Changes">What they are told.</param>
    /// <param name="End">Ends it.</param>
    public sealed record Watch(ChannelReader<Told> Changes, Action End) : IDisposable
    {
        /// <inheritdoc/>
        public void Dispose() => End();
    }
}
