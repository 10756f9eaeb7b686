using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Model.Procedures;

namespace ProcScript.Jobs.Learning;

/// <summary>
/// Measures steps by a journal. A step takes as long as it is from the tick before of the same person to its own, less the stops in between. That is no
/// measure where it says nothing of the step; <see cref="NoMeasure"/> has the reasons. Ticks that follow one another within a
/// minute each are taken for an afterthought, and all of them left, where the steps after the first came in less than half of the time that is planned for them.
/// What is longer than two hours and than four times the plan is no step but a lunch, a night or another job.
/// </summary>
internal sealed class StepClock
{
    private static readonly TimeSpan InARow = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan Longest = TimeSpan.FromHours(2);
    private const double MostOfPlan = 4;
    private const double LeastOfPlan = 0.5;

    private readonly Dictionary<int, TickedStep> _ticked;
    private readonly HashSet<(string? Plan, int Step)> _undone;
    private readonly List<(DateTimeOffset From, DateTimeOffset To)> _stops = [];
    private readonly Dictionary<string, Mark> _marks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<(StepTick Tick, TimeSpan Gap)>> _ticks = new(StringComparer.Ordinal);
    private DateTimeOffset? _stopped;

    private StepClock(JobReplay replay)
    {
        _ticked = replay.Ticked.ToDictionary(tick => tick.Event.Number);
        _undone = [.. replay.WithoutSlips.Where(happened => happened is { Kind: EventKind.Undone, Step: not null }).Select(happened => (happened.Plan, happened.Step!.Value))];
    }

    /// <summary>Every step that was done, with its measure or why there is none.</summary>
    /// <param name="replay">The job.</param>
    public static ImmutableArray<StepTick> Of(JobReplay replay)
    {
        var clock = new StepClock(replay);
        // Tablets tell late; what happened first counts first.
        foreach (var happened in replay.WithoutSlips.OrderBy(happened => happened.At).ThenBy(happened => happened.Number))
        {
            clock.Hear(happened);
        }

        return [.. clock._ticks.Values.SelectMany(WithoutAfterthoughts).OrderBy(tick => tick.Ticked.Event.Number)];
    }

    private void Hear(JobEvent happened)
    {
        switch (happened.Kind)
        {
            case EventKind.Done:
                Tick(happened);
                break;
            case EventKind.Did:
                _marks[happened.By] = new Mark(happened.At, NoMeasure.OtherWork);
                break;
            case EventKind.Undone when happened.Event is null:
                _marks[happened.By] = new Mark(happened.At, NoMeasure.Undone);
                break;
            case EventKind.Pause:
                _stopped ??= happened.At;
                break;
            case EventKind.HandOver:
                _stopped ??= happened.At;
                _marks[happened.By] = new Mark(happened.At, NoMeasure.Stopped);
                _marks[happened.To ?? ""] = new Mark(happened.At, NoMeasure.Stopped);
                break;
            case EventKind.Resume when _stopped is { } from:
                _stops.Add((from, happened.At));
                _stopped = null;
                break;
            case EventKind.Replanned or EventKind.Rebased:
                ForgetAll(happened.At, NoMeasure.OtherWork);
                break;
        }
    }

    private void Tick(JobEvent happened)
    {
        if (_stopped is not null)
        {
            // They went on, and nobody said when.
            _stopped = null;
            ForgetAll(happened.At, NoMeasure.Stopped);
            _marks.TryAdd(happened.By, new Mark(happened.At, NoMeasure.Stopped));
        }

        if (_ticked.TryGetValue(happened.Number, out var ticked))
        {
            if (!_ticks.TryGetValue(happened.By, out var ticks))
            {
                _ticks.Add(happened.By, ticks = []);
            }

            ticks.Add((Measure(ticked), ticks is [.., var (last, _)] ? Between(last.Ticked.Event.At, happened.At) : TimeSpan.MaxValue));
        }

        // Whatever runs by itself may be ticked at its beginning or at its end: nothing is begun by such a tick.
        _marks[happened.By] = new Mark(happened.At, ticked is not null && RunsByItself(ticked.Step) ? NoMeasure.Waiting : null);
    }

    private StepTick Measure(TickedStep ticked)
    {
        var (happened, step) = (ticked.Event, ticked.Step);
        if (Unfit(happened, step) is { } unfit)
        {
            return new StepTick(ticked, null, unfit);
        }

        if (!_marks.TryGetValue(happened.By, out var mark) || mark.Because is not null)
        {
            return new StepTick(ticked, null, mark?.Because ?? NoMeasure.First);
        }

        var took = Between(mark.At, happened.At);
        return took > Longest && took.TotalSeconds > MostOfPlan * step.Duration.Seconds ? new StepTick(ticked, null, NoMeasure.TooLong)
            : new StepTick(ticked, took.TotalSeconds, null);
    }

    private NoMeasure? Unfit(JobEvent happened, CourseStep step) =>
        _undone.Contains((happened.Plan, step.Number)) ? NoMeasure.Undone
        : RunsByItself(step) || !step.Line.WaitsFor.IsEmpty || !step.Line.WaitsForCureOf.IsEmpty ? NoMeasure.Waiting
        : step.Count > 0 && happened.Count is { } pieces && pieces != step.Count ? NoMeasure.OtherCount
        : null;

    private static bool RunsByItself(CourseStep step) => step.Line.InBackground || step.Verb == Verb.Pause;

    /// <summary>The time between two moments, less the stops.</summary>
    private TimeSpan Between(DateTimeOffset from, DateTimeOffset to) => _stops
        .Select(stop => (From: stop.From > from ? stop.From : from, To: stop.To < to ? stop.To : to))
        .Where(stop => stop.To > stop.From)
        .Aggregate(to - from, (left, stop) => left - (stop.To - stop.From));

    private void ForgetAll(DateTimeOffset at, NoMeasure because)
    {
        foreach (var person in _marks.Keys.ToList())
        {
            _marks[person] = new Mark(at, because);
        }
    }

    private static IEnumerable<StepTick> WithoutAfterthoughts(List<(StepTick Tick, TimeSpan Gap)> ticks)
    {
        for (var first = 0; first < ticks.Count;)
        {
            var next = first + 1;
            while (next < ticks.Count && ticks[next].Gap < InARow)
            {
                next++;
            }

            var later = ticks[(first + 1)..next];
            var isAfterthought = later.Count > 0 && later.Sum(one => one.Gap.TotalSeconds) <= LeastOfPlan * later.Sum(one => one.Tick.Ticked.Step.Duration.Seconds);
            foreach (var (tick, _) in ticks[first..next])
            {
                yield return isAfterthought && tick.Seconds is not null ? tick with { Seconds = null, Because = NoMeasure.AtOnce } : tick;
            }

            first = next;
        }
    }

    /// <summary>When somebody was last seen to end something, and why that is no beginning of the next step.</summary>
    private sealed record Mark(DateTimeOffset At, NoMeasure? Because);
}

/// <summary>A step that was done, and how long it took.</summary>
/// <param name="Ticked">The step.</param>
/// <param name="Seconds">How long it took; null where that was not measured.</param>
/// <param name="Because">Why it was not; null where it was.</param>
internal sealed record StepTick(TickedStep Ticked, double? Seconds, NoMeasure? Because);
