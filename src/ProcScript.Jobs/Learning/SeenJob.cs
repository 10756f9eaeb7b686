using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Learning;

/// <summary>What one job has to tell: told by its own cards, and small, so that a shop's whole archive can be looked at.</summary>
public sealed record SeenJob
{
    /// <summary>The job's name in its store.</summary>
    public required string Name { get; init; }

    /// <summary>The procedure with its arguments.</summary>
    public required string Procedure { get; init; }

    /// <summary>The options that its machine has.</summary>
    public required ImmutableArray<string> With { get; init; }

    /// <summary>Whether it was closed.</summary>
    public required bool IsClosed { get; init; }

    /// <summary>How many steps were ticked.</summary>
    public required int Ticked { get; init; }

    /// <summary>How many of these are no measure, and why.</summary>
    public required ImmutableSortedDictionary<NoMeasure, int> NotMeasured { get; init; }

    /// <summary>The steps that were measured.</summary>
    internal ImmutableArray<SeenTime> Times { get; init; } = [];

    /// <summary>What was moved of each item, and what became of it.</summary>
    internal ImmutableArray<SeenPieces> Pieces { get; init; } = [];

    /// <summary>The tools that were missing.</summary>
    internal ImmutableArray<SeenWords> Tools { get; init; } = [];

    /// <summary>What broke or was missing, and is no item of the machine.</summary>
    internal ImmutableArray<SeenWords> Things { get; init; } = [];

    /// <summary>The notes.</summary>
    internal ImmutableArray<SeenWords> Notes { get; init; } = [];

    /// <summary>Looks at a job. What happened counts, whether the job is closed or not.</summary>
    /// <param name="name">Its name in the store.</param>
    /// <param name="replay">Its journal, played.</param>
    public static SeenJob Of(string name, JobReplay replay)
    {
        ArgumentNullException.ThrowIfNull(replay);
        var head = replay.Head ?? throw new ArgumentException("A job that was never opened tells nothing.", nameof(replay));
        var ticks = StepClock.Of(replay);
        var steps = new StepNames(replay);
        var told = replay.WithoutSlips.ToList();
        return new SeenJob
        {
            Name = name,
            Procedure = head.Name,
            With = head.With,
            IsClosed = replay.Closed is not null,
            Ticked = ticks.Length,
            NotMeasured = ticks.Where(tick => tick.Because is not null).GroupBy(tick => tick.Because!.Value).ToImmutableSortedDictionary(reason => reason.Key, reason => reason.Count()),
            Times = [.. ticks.Where(tick => tick.Seconds is not null).Select(tick => new SeenTime(steps.Of(tick.Ticked), tick.Ticked.Step.Line.Text, tick.Ticked.Step.Duration.Pieces, tick.Seconds!.Value))],
            Pieces = [.. PiecesOf(replay, told)],
            Tools = [.. told.Where(happened => happened is { Kind: EventKind.Missing, Tool: not null }).Select(happened => steps.Words(happened, happened.Tool!))],
            Things = [.. told.Where(happened => happened is { Kind: EventKind.Broke or EventKind.Missing, Item: null, Tool: null, Text: not null }).Select(happened => steps.Words(happened, happened.Text!))],
            Notes = [.. told.Where(happened => happened is { Kind: EventKind.Note, Text: not null }).Select(happened => steps.Words(happened, happened.Text!))],
        };
    }

    private static IEnumerable<SeenPieces> PiecesOf(JobReplay replay, List<JobEvent> told)
    {
        var broken = told.Where(happened => happened is { Kind: EventKind.Broke, Item: not null }).ToLookup(happened => happened.Item!, happened => happened.Count ?? 1);
        var moved = replay.Ticked.Where(tick => tick.Step.Target is Part || tick.Step.Count > 0).ToLookup(tick => tick.Step.Target!.Name);
        return from item in moved.Select(one => one.Key).Union(broken.Select(one => one.Key)).Union(replay.Lost.Keys).Order(StringComparer.Ordinal)
               let off = Sum(moved[item].Where(tick => tick.Step.Phase != CoursePhase.Refit))
               let back = Sum(moved[item].Where(tick => tick.Step.Phase == CoursePhase.Refit))
               let gone = broken[item].Sum()
               let lost = replay.Lost.GetValueOrDefault(item)
               select new SeenPieces(item, Math.Max(Math.Max(off, back), gone + lost), gone, lost);
    }

    private static int Sum(IEnumerable<TickedStep> ticks) =>
        ticks.GroupBy(tick => (tick.Plan, tick.Step.Number)).Sum(step => step.Last() is { Step.Target: Joint } last ? last.Event.Count ?? last.Step.Count : 1);

    /// <summary>The steps that events speak of, by the cards that were followed then.</summary>
    private sealed class StepNames(JobReplay replay)
    {
        private readonly Dictionary<string, (JobCourse Course, Dictionary<int, StepIdentity> Steps)> _plans = replay.Courses
            .DistinctBy(course => course.Plan.Revision).ToDictionary(course => course.Plan.Revision, course => (course, StepIdentity.Of(course)), StringComparer.Ordinal);

        public StepIdentity Of(TickedStep ticked) => _plans[ticked.Plan].Steps[ticked.Step.Number];

        public SeenWords Words(JobEvent happened, string text) =>
            happened is { Step: { } number, Plan: { } plan } && _plans.TryGetValue(plan, out var told) && told.Course.Step(number) is { } step
                ? new SeenWords(told.Steps[number], step.Line.Text, text, happened.Count ?? 1)
                : new SeenWords(null, "", text, happened.Count ?? 1);
    }
}

/// <summary>A step that was measured.</summary>
/// <param name="Step">The step.</param>
/// <param name="Text">What the cards said of it.</param>
/// <param name="Pieces">How many pieces it moves one by one.</param>
/// <param name="Seconds">How long it took.</param>
internal sealed record SeenTime(StepIdentity Step, string Text, int Pieces, double Seconds);

/// <summary>What was moved of an item in a job.</summary>
/// <param name="Item">The item.</param>
/// <param name="Handled">How many pieces came off or went on.</param>
/// <param name="Broke">How many broke.</param>
/// <param name="Lost">How many were not there, or were lost and did not turn up.</param>
internal sealed record SeenPieces(string Item, int Handled, int Broke, int Lost);

/// <summary>Words that somebody told.</summary>
/// <param name="Step">The step that they belong to; null where they belong to none.</param>
/// <param name="StepText">What the cards said of it.</param>
/// <param name="Text">The words.</param>
/// <param name="Count">How many of it, where it is a thing.</param>
internal sealed record SeenWords(StepIdentity? Step, string StepText, string Text, int Count);
