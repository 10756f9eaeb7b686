using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Analysis.States;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Journals;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Replays;

/// <summary>
/// A job as its journal tells it, played on the machine's own states. It takes every event as it comes: what happened has happened, whether it was
/// planned or not, and the machine stands as it was left.
/// </summary>
public sealed class JobReplay
{
    private readonly JobCourse _frozen;
    private readonly Func<JobEvent, JobCourse?> _newer;
    private readonly List<JobEvent> _events = [];
    private readonly HashSet<int> _slips = [];
    private readonly SortedDictionary<int, DoneStep> _done = [];
    private readonly List<JobCourse> _courses = [];
    private readonly List<TickedStep> _ticked = [];
    private readonly List<Deviation> _deviations = [];
    private readonly List<TakenReading> _readings = [];
    private readonly List<string> _owed = [];
    private readonly Dictionary<string, int> _extra = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _lost = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _broken = new(StringComparer.Ordinal);

    private JobReplay(JobCourse course, Func<JobEvent, JobCourse?> newer)
    {
        (_frozen, _newer, Course, Machine) = (course, newer, course, course.Begin());
        _courses.Add(course);
    }

    /// <summary>The course that the job follows now.</summary>
    public JobCourse Course { get; private set; }

    /// <summary>All courses that it has followed, the one of now last.</summary>
    public IReadOnlyList<JobCourse> Courses => _courses;

    /// <summary>The machine as it stands.</summary>
    public TrueMachine Machine { get; private set; }

    /// <summary>What job it is; null before its first event.</summary>
    public JobHead? Head => _events is [{ Job: { } head }, ..] ? head : null;

    /// <summary>All events, in order.</summary>
    public IReadOnlyList<JobEvent> Events => _events;

    /// <summary>The events that were slips, by their numbers.</summary>
    public IReadOnlySet<int> Slips => _slips;

    /// <summary>The events that were no slips, in order.</summary>
    public IEnumerable<JobEvent> WithoutSlips => _events.Where(happened => !_slips.Contains(happened.Number));

    /// <summary>Every signature for a step.</summary>
    public IEnumerable<JobEvent> Signatures => WithoutSlips.Where(happened => happened is { Kind: EventKind.Sign, Step: not null });

    /// <summary>The steps of the course that are done, by their numbers.</summary>
    public IReadOnlyDictionary<int, DoneStep> Done => _done;

    /// <summary>Every step that was done, by the cards that were followed then, in the order of the journal; those that were undone again among them.</summary>
    public IReadOnlyList<TickedStep> Ticked => _ticked;

    /// <summary>What happened otherwise than planned.</summary>
    public IReadOnlyList<Deviation> Deviations => _deviations;

    /// <summary>The readings that were taken.</summary>
    public IReadOnlyList<TakenReading> Readings => _readings;

    /// <summary>What was to be written down or signed by earlier cards, and was not before newer ones were made.</summary>
    public IReadOnlyList<string> Owed => _owed;

    /// <summary>How many pieces there are more than the plan knows of, by their items or, where they are of none, what they are.</summary>
    public IReadOnlyDictionary<string, int> Extra => _extra;

    /// <summary>How many pieces are lost or were not there, by their items.</summary>
    public IReadOnlyDictionary<string, int> Lost => _lost;

    /// <summary>How many pieces broke, by their items.</summary>
    public IReadOnlyDictionary<string, int> Broken => _broken;

    /// <summary>The pause or hand-over that nobody has gone on from; null where the work goes on.</summary>
    public JobEvent? Paused { get; private set; }

    /// <summary>The event that closed it; null while it is open.</summary>
    public JobEvent? Closed { get; private set; }

    /// <summary>Whether the job has left its course, so that the refit has to be derived anew before cards can be trusted.</summary>
    public bool IsOffCourse { get; private set; }

    /// <summary>Why the newest cards cannot be followed by this program; empty where they can.</summary>
    public string Unfollowed { get; private set; } = "";

    /// <summary>Plays a journal.</summary>
    /// <param name="course">The course that was frozen when the job was opened.</param>
    /// <param name="events">The events.</param>
    /// <param name="newer">Finds the course of a newer text that a job goes on by; null where there is none.</param>
    public static JobReplay Of(JobCourse course, IEnumerable<JobEvent> events, Func<JobEvent, JobCourse?>? newer = null)
    {
        ArgumentNullException.ThrowIfNull(events);
        var all = events.ToList();
        var replay = new JobReplay(course, newer ?? (_ => null));
        // A slip never was: it is left out from the start, whatever came in between.
        replay._slips.UnionWith(JobEvent.SlipsOf(all));
        foreach (var happened in all)
        {
            replay.Add(happened);
        }

        return replay;
    }

    /// <summary>The job with one event more.</summary>
    /// <param name="happened">The event.</param>
    public JobReplay With(JobEvent happened)
    {
        ArgumentNullException.ThrowIfNull(happened);
        if (happened is { Kind: EventKind.Undone, Event: not null })
        {
            return Of(_frozen, [.. _events, happened], _newer);
        }

        Add(happened);
        return this;
    }

    /// <summary>Says why the cards cannot be followed by this program.</summary>
    /// <param name="why">Why.</param>
    internal void Doubt(string why) => Unfollowed = why;

    /// <summary>The steps that may be done now, in the order of the cards.</summary>
    public IEnumerable<CourseStep> Next()
    {
        if (Closed is not null)
        {
            return [];
        }

        var left = Course.Steps.Where(step => !_done.ContainsKey(step.Number)).ToList();
        var isStripped = !left.Exists(step => step.Phase != CoursePhase.Refit);
        return left.Where(step => (isStripped || step.Phase != CoursePhase.Refit) && step.Earlier.All(_done.ContainsKey) && Machine.Missing(step).IsEmpty);
    }

    /// <summary>What was read last at a step; null where nothing was.</summary>
    /// <param name="step">The step's number.</param>
    public TakenReading? ReadingAt(int step) => _readings.LastOrDefault(reading => reading.Step == step);

    private void Add(JobEvent happened)
    {
        _events.Add(happened);
        if (_slips.Contains(happened.Number))
        {
            return;
        }

        switch (happened.Kind)
        {
            case EventKind.Done when StepOf(happened) is { } step:
                DoStep(happened, step);
                break;
            case EventKind.Done:
                DoOutside(happened);
                break;
            case EventKind.Undone when happened.Event is null && StepOf(happened) is { } step:
                UndoStep(happened, step);
                break;
            case EventKind.Reading:
                Read(happened);
                break;
            case var kind when kind.IsDeviation:
                Deviate(happened);
                break;
            case EventKind.Bag:
                CountBag(happened);
                break;
            case EventKind.Pause or EventKind.HandOver:
                Paused = happened;
                break;
            case EventKind.Resume:
                Paused = null;
                break;
            case EventKind.Replanned:
                Replan(happened);
                break;
            case EventKind.Rebased:
                Rebase(happened);
                break;
            case EventKind.Closed:
                (Closed, Paused) = (happened, null);
                break;
        }
    }

    /// <summary>Takes what is a deviation by itself.</summary>
    private void Deviate(JobEvent happened)
    {
        switch (happened.Kind)
        {
            case EventKind.Did:
                DoOutside(happened);
                break;
            case EventKind.Broke:
                Broke(happened);
                break;
            case EventKind.Missing:
                Miss(happened);
                break;
            case EventKind.Found:
                FindPieces(happened);
                break;
            default:
                throw new InvalidOperationException($"{happened.Kind} is a deviation, and nothing says what it means for the machine.");
        }
    }

    private CourseStep? StepOf(JobEvent happened) =>
        happened is { Step: { } number } && (happened.Plan is null || happened.Plan == Course.Plan.Revision) ? Course.Step(number) : null;

    private void DoStep(JobEvent happened, CourseStep step)
    {
        if (_done.ContainsKey(step.Number))
        {
            // Two people ticked it, or one did twice: it was done once.
            return;
        }

        var (missing, before) = (Machine.Missing(step), Dangers());
        var earlier = step.Earlier.Where(number => !_done.ContainsKey(number)).ToList();
        var pieces = happened.Count ?? step.Count;
        var moved = Moves(step, pieces);
        var changes = Machine.Do(step, moved);
        _done.Add(step.Number, new DoneStep(happened, changes));
        _ticked.Add(new TickedStep(happened, step, Course.Plan.Revision));
        var text = step.Target is Joint joint && step.Count > 0 && pieces != step.Count
            ? CountsOtherwise(step, joint, pieces)
            : "";
        var means = missing.Concat(earlier.Count == 0 ? [] : [$"{Steps(earlier)} {(earlier.Count == 1 ? "was" : "were")} to go before it"]).ToList();
        if (text.Length == 0 && means.Count > 0)
        {
            text = $"step {step.Number} ({step.Line.Text}) was done out of order";
        }

        Tell(happened, text, means, before);
    }

    /// <summary>How many pieces of the machine a step moves: what is more than it has is kept apart.</summary>
    private int? Moves(CourseStep step, int pieces) => step.Target is Joint joint && step.Count > 0
        ? Math.Min(pieces, step.Phase == CoursePhase.Refit ? Machine.Off(joint) : joint.Count - Machine.Off(joint))
        : null;

    private string CountsOtherwise(CourseStep step, Joint joint, int pieces)
    {
        var isRefit = step.Phase == CoursePhase.Refit;
        if (pieces < step.Count)
        {
            return isRefit
                ? $"step {step.Number}: {pieces} of {step.Count} went on, {TrueMachine.Pieces(joint, step.Count - pieces)} left off"
                : $"step {step.Number}: {pieces} of {step.Count} came off, {TrueMachine.Pieces(joint, step.Count - pieces)} still on";
        }

        Change(_extra, joint.Name, isRefit ? step.Count - pieces : pieces - step.Count);
        return isRefit
            ? $"step {step.Number}: {pieces} went on where the plan has {step.Count}: {TrueMachine.Pieces(joint, pieces)}"
            : $"step {step.Number}: {pieces} came off where the plan has {step.Count}: {TrueMachine.Pieces(joint, pieces)}";
    }

    private void DoOutside(JobEvent happened)
    {
        if (happened is not { Verb: { } word, Item: { } name } || TrueMachine.VerbOf(word) is not { } verb
            || !Course.Machine.Items.TryGetValue(name, out var item) || !TrueMachine.Suits(verb, item))
        {
            return;
        }

        var value = item is Control control ? Math.Max(0, control.Positions.IndexOf(happened.Position ?? "")) : happened.Count ?? (item as Joint)?.Count ?? 0;
        var (missing, before) = (Machine.Missing(verb, item, value), Dangers());
        Machine.Do(verb, item, value);
        var pieces = item is Joint joint ? TrueMachine.Pieces(joint, value) : TrueMachine.Title(item);
        Tell(happened, $"{word} {pieces}: no step of the plan", missing, before);
    }

    private void UndoStep(JobEvent happened, CourseStep step)
    {
        if (!_done.Remove(step.Number, out var done))
        {
            return;
        }

        var before = Dangers();
        if (done.Event?.Count is { } pieces && step is { Target: Joint joint, Count: > 0 } && pieces > step.Count)
        {
            Change(_extra, joint.Name, step.Phase == CoursePhase.Refit ? pieces - step.Count : step.Count - pieces);
        }

        Machine.TakeBack(done.Changes);
        Tell(happened, "", [], before);
    }

    private void Read(JobEvent happened)
    {
        var step = StepOf(happened);
        var verdict = ReadingCheck.Compare(happened.Value ?? "", step?.Expect);
        var limits = step?.Line.Reading?.Limits is { Length: > 0 } words ? words : step?.Expect is { } limit ? Limits.Say(limit) : "";
        _readings.Add(new TakenReading(happened, step?.Number ?? 0, happened.Text ?? step?.Line.Reading?.Text ?? step?.Line.Text ?? "", happened.Value ?? "", limits, verdict));
        if (verdict != ReadingVerdict.Good)
        {
            var what = verdict == ReadingVerdict.Unreadable ? $"`{happened.Value}` was written down, and it must be {limits}" : $"{happened.Value} was read where it must be {limits}";
            _deviations.Add(new Deviation(happened, $"step {step!.Number}: {what}", step.Target is Energy energy ? [$"treat the {energy.Title} as live"] : []));
        }
    }

    private void Broke(JobEvent happened)
    {
        Change(_broken, Named(happened), happened.Count ?? 1);
        _deviations.Add(new Deviation(happened, $"{PiecesOf(happened)} broke", happened.Item is null ? [] : ["a new one has to go in"]));
    }

    private void Miss(JobEvent happened)
    {
        if (happened.Tool is { } tool)
        {
            // What the cards do not name changes nothing of the machine.
            _deviations.Add(new Deviation(happened, $"a tool was missing{(happened.Step is { } at ? $" at step {at}" : "")}: {tool}", []));
            return;
        }

        var count = happened.Count ?? 1;
        var before = Dangers();
        if (happened.Item is { } name && Course.Machine.Items.TryGetValue(name, out var item))
        {
            Change(_lost, name, count);
            if (happened.Bag is null && item is Joint joint && Machine.State.Attached(joint) > 0)
            {
                // It was not there when the joint was opened.
                Machine.Do(Analysis.Runs.MachineMoment.Opening(joint), joint, Math.Min(count, Machine.State.Attached(joint)));
            }
        }

        Tell(happened, happened.Bag is { } bag ? $"{PiecesOf(happened)} is missing from bag {bag}" : $"{PiecesOf(happened)} was not there", [], before);
    }

    private void FindPieces(JobEvent happened)
    {
        var (name, count) = (Named(happened), happened.Count ?? 1);
        var lost = Math.Min(count, _lost.GetValueOrDefault(name));
        Change(_lost, name, -lost);
        Change(_extra, name, count - lost);
        _deviations.Add(new Deviation(happened, lost == count ? $"{PiecesOf(happened)} turned up again" : $"{PiecesOf(happened)} more than the plan knows of", []));
    }

    private void CountBag(JobEvent happened)
    {
        if (happened is { Bag: { } number, Count: { } counted } && BagContents.Of(this, number) is { } bag && bag.Count != counted)
        {
            _deviations.Add(new Deviation(happened, $"bag {number} holds {counted}, and {bag.Count} belong in it", []));
        }
    }

    private void Replan(JobEvent happened)
    {
        if (Machine.WayHome() is { } course && (happened.Plan is null || course.Plan.Revision == happened.Plan))
        {
            Follow(course, course.Done);
        }
        else
        {
            Unfollowed = $"this version of the program comes to other cards than those of {happened.File}";
        }
    }

    private void Rebase(JobEvent happened)
    {
        if (_newer(happened) is { } newer && Rebasing.Carry(this, newer) is { Course: { } course } carried && (happened.Plan is null || course.Plan.Revision == happened.Plan))
        {
            Follow(course, carried.Done);
        }
        else
        {
            Unfollowed = $"the cards of {happened.File} cannot be made from what lies beside them";
        }
    }

    private void Follow(JobCourse course, IEnumerable<int> done)
    {
        _owed.AddRange(JobClosing.OfPaper(this).Select(one => $"{one} (cards of revision {Course.Plan.Revision})"));
        Machine = Machine.On(course);
        _courses.Add(course);
        (Course, IsOffCourse, Unfollowed) = (course, false, "");
        _done.Clear();
        foreach (var number in done)
        {
            _done.Add(number, new DoneStep(null, Undoing(course.Steps[number - 1])));
        }
    }

    /// <summary>What a step that is done must have changed: to undo it is to take that back.</summary>
    private ImmutableArray<StateChange> Undoing(CourseStep step) => [.. step.Changes.Where(change => Machine.State[change.Variable] == change.After)];

    /// <summary>What is unsafe or hidden; looked for only where the job has left its course, for on it the proof says that nothing is.</summary>
    private HashSet<string> Dangers() => IsOffCourse ? [.. Machine.Unsafe(), .. Machine.Hidden()] : [];

    private void Tell(JobEvent happened, string text, IReadOnlyList<string> means, HashSet<string> before)
    {
        IsOffCourse |= text.Length > 0;
        if (!IsOffCourse)
        {
            return;
        }

        ImmutableArray<string> all = [.. means, .. Dangers().Where(danger => !before.Contains(danger))];
        if (text.Length > 0 || all.Length > 0)
        {
            var step = StepOf(happened);
            _deviations.Add(new Deviation(happened, text.Length > 0 ? text : $"step {happened.Step} ({step?.Line.Text})", all));
        }
    }

    private string PiecesOf(JobEvent happened) =>
        happened.Item is not { } name || !Course.Machine.Items.TryGetValue(name, out var item) ? $"{happened.Count ?? 1} × {Named(happened)}"
        : item is Joint joint ? TrueMachine.Pieces(joint, happened.Count ?? 1)
        : TrueMachine.Title(item);

    private static string Named(JobEvent happened) => happened.Item ?? happened.Text ?? "";

    private static string Steps(IReadOnlyList<int> numbers) => numbers.Count == 1 ? $"step {numbers[0]}" : $"steps {string.Join(", ", numbers)}";

    private static void Change(Dictionary<string, int> counts, string name, int by)
    {
        var now = Math.Max(0, counts.GetValueOrDefault(name) + by);
        if (now == 0)
        {
            counts.Remove(name);
        }
        else
        {
            counts[name] = now;
        }
    }
}
