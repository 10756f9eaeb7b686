using System.Collections.Concurrent;
using System.Collections.Immutable;
using ProcScript.Floor.Documents;
using ProcScript.Floor.Index;
using ProcScript.Jobs.Standing;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Desk;

/// <summary>
/// All jobs of the shop, a line each. It is what their journals say: one is read when its stamp shows that it is not as it was, and never else.
/// </summary>
/// <param name="store">Where the jobs are kept.</param>
/// <param name="index">Keeps the lines from one start to the next; null where nothing does.</param>
/// <param name="feed">Tells whoever watches.</param>
/// <param name="clock">The clock.</param>
public sealed class ShopBoard(IJobStore store, BoardIndex? index, ChangeFeed feed, TimeProvider clock)
{
    /// <summary>The most changes of one look that are told by themselves: after more, all is asked for anew.</summary>
    private const int MostTold = 200;

    /// <summary>For how many times as long as a look has taken it is good enough.</summary>
    private const int Rest = 5;

    private static readonly TimeSpan LongestRest = TimeSpan.FromSeconds(30);

    private readonly ConcurrentDictionary<string, KnownLine> _lines = new(index?.Read() ?? ImmutableDictionary<string, KnownLine>.Empty, StringComparer.Ordinal);
    private readonly SemaphoreSlim _looking = new(1, 1);
    private long _begun = long.MinValue;
    private long _ended = long.MinValue;

    /// <summary>For how long the last look is good enough: on a share that answers slowly, looking is most of the work.</summary>
    public TimeSpan GoodFor { get; private set; }

    /// <summary>The board.</summary>
    /// <param name="withClosed">Whether jobs that are closed are on it.</param>
    /// <param name="only">The jobs that are asked for; empty for all.</param>
    /// <param name="stop">Ends the work.</param>
    public async Task<Board> AsBoardAsync(bool withClosed, IReadOnlyCollection<string> only, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(only);
        if (_ended == long.MinValue || clock.GetElapsedTime(_ended) >= GoodFor)
        {
            await LookAsync(stop);
        }

        var shown = only.Count == 0 ? _lines.Values.Select(known => known.Line) : only.Distinct(StringComparer.Ordinal).Select(job => _lines.GetValueOrDefault(job)?.Line);
        return new Board(
            [
                .. shown.OfType<JobLine>().Where(line => withClosed || line.State != "closed")
                    .OrderBy(line => line.State == "closed").ThenByDescending(line => line.LastAt).ThenBy(line => line.Job, StringComparer.Ordinal),
            ],
            [.. _lines.Values.Select(known => known.Fault).OfType<string>().Order(StringComparer.Ordinal)],
            clock.GetUtcNow());
    }

    /// <summary>Takes up what this server has written itself, and tells whoever watches.</summary>
    /// <param name="job">The job.</param>
    /// <param name="known">What its journal says now.</param>
    public void Put(string job, KnownLine known)
    {
        ArgumentNullException.ThrowIfNull(known);
        _lines[job] = known;
        feed.Tell(job, known.Line?.Events ?? 0);
    }

    /// <summary>Takes up what others have written, and tells whoever watches. Who asks while somebody looks waits for one look more, which all share.</summary>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="JobStoreException">The jobs cannot be reached.</exception>
    public async Task LookAsync(CancellationToken stop)
    {
        var asked = clock.GetTimestamp();
        await _looking.WaitAsync(stop);
        try
        {
            if (_begun >= asked)
            {
                return;
            }

            _begun = clock.GetTimestamp();
            var stamps = await store.StampsAsync(stop);
            GoodFor = clock.GetElapsedTime(_begun) * Rest is var rest && rest < LongestRest ? rest : LongestRest;
            var changed = await ReadAsync(stamps, stop);
            foreach (var gone in _lines.Keys.Where(job => !stamps.ContainsKey(job)))
            {
                _lines.TryRemove(gone, out _);
                changed.Add((gone, 0));
            }

            Tell(changed);
            _ended = clock.GetTimestamp();
        }
        finally
        {
            _looking.Release();
        }
    }

    /// <summary>Has the index keep what is known.</summary>
    public void Keep() => index?.Write(_lines);

    private async Task<List<(string Job, int Events)>> ReadAsync(IReadOnlyDictionary<string, JournalStamp> stamps, CancellationToken stop)
    {
        var changed = new ConcurrentBag<(string, int)>();
        var behind = stamps.Select(one => (Job: one.Key, Stamp: one.Value, Known: _lines.GetValueOrDefault(one.Key))).Where(one => one.Known?.Stamp != one.Stamp || one.Stamp == default).ToList();
        await Parallel.ForEachAsync(behind, stop, async (one, end) =>
        {
            var now = await LineAsync(one.Job, one.Stamp, end);
            // What this server has written meanwhile is newer: the next look sees by its stamp whether more was.
            if (now != one.Known && (one.Known is null ? _lines.TryAdd(one.Job, now) : _lines.TryUpdate(one.Job, now, one.Known)) && (now.Line != one.Known?.Line || now.Fault != one.Known?.Fault))
            {
                changed.Add((one.Job, now.Line?.Events ?? 0));
            }
        });
        return [.. changed];
    }

    private async Task<KnownLine> LineAsync(string job, JournalStamp stamp, CancellationToken stop)
    {
        try
        {
            return KnownLine.Of(job, stamp, await store.ReadAsync(job, stop));
        }
        catch (JobStoreException failure)
        {
            // Whatever was in the way may be gone at the next look, and the journal the same.
            return new KnownLine(default, null, $"{job}: {failure.Message}");
        }
    }

    private void Tell(List<(string Job, int Events)> changed)
    {
        if (changed.Count > MostTold)
        {
            feed.Tell("", 0);
            return;
        }

        foreach (var (job, events) in changed)
        {
            feed.Tell(job, events);
        }
    }
}
