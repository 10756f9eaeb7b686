using System.Collections.Immutable;
using ProcScript.Cards;
using ProcScript.Floor.Documents;
using ProcScript.Floor.Doors;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Intake;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Desk;

/// <summary>A job that is held in memory; one at a time works with it.</summary>
/// <param name="job">The job's name in the store.</param>
public sealed class HeldJob(string job)
{
    private readonly SemaphoreSlim _gate = new(1, 1);
    private readonly Dictionary<string, JournalLine> _lines = new(StringComparer.Ordinal);
    private JobReplay? _replay;
    private PageCards? _cards;
    private JobNow? _now;
    private string _lastHash = JournalText.NoHash;
    private JournalFault? _damage;

    /// <summary>How its journal was when it was last read or written here.</summary>
    public JournalStamp Stamp { get; private set; }

    /// <summary>Whether it has been read.</summary>
    public bool IsLoaded => _replay is not null;

    /// <summary>Whether nobody works with it.</summary>
    public bool IsIdle => _gate.CurrentCount > 0;

    /// <summary>When somebody last asked for it.</summary>
    public DateTimeOffset AskedAt { get; private set; }

    /// <summary>The job as it is played.</summary>
    public JobReplay Replay => _replay ?? throw new InvalidOperationException("The job has not been read.");

    /// <summary>Works with it alone.</summary>
    /// <param name="store">Where it is kept.</param>
    /// <param name="work">The work.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="stop">Ends the waiting.</param>
    public async Task<T> WithAsync<T>(IJobStore store, Func<HeldJob, Task<T>> work, TimeProvider clock, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(clock);
        await _gate.WaitAsync(stop);
        try
        {
            AskedAt = clock.GetUtcNow();
            if (_replay is null)
            {
                await LoadAsync(store, stop);
            }

            return await work(this);
        }
        finally
        {
            _gate.Release();
        }
    }

    /// <summary>The cards that it is done by now.</summary>
    public PageCards Cards() => _cards?.Revision == Replay.Course.Plan.Revision ? _cards : _cards = PageCardsOf.Course(Replay.Course, Replay.Head!);

    /// <summary>How it stands.</summary>
    /// <param name="clock">The clock.</param>
    public JobNow Now(TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        var time = clock.GetUtcNow();
        return _now = _now?.Events == Replay.Events.Count ? _now with { Time = time } : JobNowOf.Replay(Replay, _lastHash, time);
    }

    /// <summary>Looks at an event and writes it down.</summary>
    /// <param name="store">Where it is kept.</param>
    /// <param name="told">The event.</param>
    /// <param name="logged">When it was told.</param>
    /// <param name="stop">Ends the work.</param>
    public async Task<EventAnswer> TakeAsync(IJobStore store, ToldEvent told, DateTimeOffset logged, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(told);
        var happened = told.Of(logged);
        if (_lines.TryGetValue(told.Id, out var there))
        {
            return Again(there, happened);
        }

        var open = happened.Kind == EventKind.Closed ? JobClosing.Open(Replay) : [];
        if (_damage is { } damage)
        {
            throw new JobStoreException($"the journal of '{job}' is damaged in line {damage.Line}: {damage.Problem}. Nothing can be added to it; open a new job for what is left to do.");
        }

        if (await RefusalAsync(store, happened, open, stop) is { } why)
        {
            return new EventAnswer(told.Id, 0, "", WasThere: false, why);
        }

        var taken = EventIntake.Take(Replay, happened.Kind == EventKind.Closed ? happened with { Despite = open.IsEmpty ? null : open } : happened, isLate: true);
        if (taken.Event is null)
        {
            return new EventAnswer(told.Id, 0, "", WasThere: false, taken.Refusal);
        }

        var appended = await store.AppendAsync(job, taken.Event, stop);
        if (appended.WasThere)
        {
            await CatchUpAsync(store, stop);
            return Again(appended.Line, happened);
        }

        if (appended.Line.Event.Number == Replay.Events.Count + 1)
        {
            Add(appended.Line);
            Stamp = appended.Stamp;
        }
        else
        {
            await CatchUpAsync(store, stop);
        }

        return new EventAnswer(told.Id, appended.Line.Event.Number, appended.Line.Hash, WasThere: false, null);
    }

    /// <summary>Makes new cards where the job has left its own, and goes on by them.</summary>
    /// <param name="store">Where it is kept.</param>
    /// <param name="by">Who asks for them.</param>
    /// <param name="time">The server's clock.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="RefusedException">There are none to be made.</exception>
    public async Task RefitAsync(IJobStore store, string by, DateTimeOffset time, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(store);
        if (Replay.Closed is not null || !Replay.IsOffCourse)
        {
            throw new RefusedException(StatusCodes.Status409Conflict, "The job has not left its cards: go on by them.");
        }

        var course = Replay.Machine.WayHome()
            ?? throw new RefusedException(StatusCodes.Status409Conflict, "No way back was found that is proven from how the machine stands. Bring it to where a card ends, tell of it, and ask again.");
        var cards = NewCards.Of(Replay, course, course.Done);
        await store.AddFilesAsync(job, cards.Files, stop);
        JobEvent told = new() { Id = $"cards-{Guid.NewGuid():N}", Kind = EventKind.Replanned, At = time, Logged = time, By = by };
        await store.AppendAsync(job, cards.Told(told, cards.PackFolder), stop);
        await CatchUpAsync(store, stop);
    }

    /// <summary>Takes up what others have written into the journal.</summary>
    /// <param name="store">Where it is kept.</param>
    /// <param name="stop">Ends the work.</param>
    public async Task CatchUpAsync(IJobStore store, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(store);
        var stamp = await store.StampAsync(job, stop);
        if (stamp == Stamp)
        {
            return;
        }

        var journal = await store.ReadAsync(job, stop);
        (Stamp, _damage) = (stamp, journal.Fault);
        var isSame = journal.Lines.Length >= Replay.Events.Count && journal.Lines[Replay.Events.Count - 1].Hash == _lastHash;
        var news = journal.Lines.Skip(Replay.Events.Count).ToList();
        if (!isSame || news.Exists(line => line.Event.Kind == EventKind.Rebased))
        {
            await LoadAsync(store, stop);
            return;
        }

        news.ForEach(Add);
    }

    private async Task LoadAsync(IJobStore store, CancellationToken stop)
    {
        // What is written while it is read is read again.
        var stamp = await store.StampAsync(job, stop);
        var loaded = await LoadedJob.ReadAsync(store, job, stop);
        Stamp = stamp;
        _lines.Clear();
        foreach (var line in loaded.Journal.Lines)
        {
            _lines[line.Event.Id] = line;
        }

        (_replay, _lastHash, _damage, _cards, _now) = (loaded.Replay, loaded.LastHash, loaded.Journal.Fault, null, null);
    }

    private void Add(JournalLine line)
    {
        _lines[line.Event.Id] = line;
        (_replay, _lastHash) = (Replay.With(line.Event), line.Hash);
    }

    /// <summary>The answer to an event that stands in the journal.</summary>
    private static EventAnswer Again(JournalLine there, JobEvent told) =>
        there.Event.Kind == told.Kind && there.Event.At == told.At && there.Event.By == told.By && there.Event.Step == told.Step
            ? new EventAnswer(told.Id, there.Event.Number, there.Hash, WasThere: true, null)
            : new EventAnswer(told.Id, 0, "", WasThere: false, $"event {there.Event.Number} has that identity already, and says something else.");

    private async Task<string?> RefusalAsync(IJobStore store, JobEvent happened, ImmutableArray<string> open, CancellationToken stop) => happened.Kind switch
    {
        EventKind.Opened or EventKind.Replanned or EventKind.Rebased => "that is told by the program alone.",
        EventKind.Photo when happened.File is { } file => await IsKeptAsync(store, file, happened.FileHash, stop) ? null : "that photo has not been sent.",
        _ when happened.File is not null || happened.FileHash is not null => "only a photo has a file.",
        EventKind.Closed => ClosingRefusal(happened, open),
        _ when happened.Despite is not null => "only a closing can be despite anything.",
        _ => null,
    };

    private static string? ClosingRefusal(JobEvent happened, ImmutableArray<string> open)
    {
        var unseen = open.Except(happened.Despite ?? []).ToList();
        return open.IsEmpty ? null
            : unseen.Count > 0 ? $"it is not as it was when you looked: {string.Join("; ", unseen)}. Look again, then close it."
            : string.IsNullOrWhiteSpace(happened.Text) ? "something is open still: say why the job is closed all the same."
            : null;
    }

    private async Task<bool> IsKeptAsync(IJobStore store, string file, string? hash, CancellationToken stop) =>
        JobNames.IsPath(file) && hash is not null && file.StartsWith($"{LoadedJob.PhotoFolder}/{hash}.", StringComparison.Ordinal) && (await store.ListFilesAsync(job, LoadedJob.PhotoFolder, stop)).Contains(file);
}
