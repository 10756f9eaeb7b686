using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;

namespace ProcScript.Jobs.Standing;

/// <summary>Tells how a job stands.</summary>
public static class JobStanding
{
    private const int MostNext = 12;
    private const int MostBack = 6;

    /// <summary>How it stands.</summary>
    /// <param name="replay">The job.</param>
    /// <param name="lastHash">The hash of the last line of its journal.</param>
    /// <param name="withWayBack">Whether the way back is looked for: that takes longest.</param>
    public static JobStatus Of(JobReplay replay, string lastHash, bool withWayBack = true)
    {
        ArgumentNullException.ThrowIfNull(replay);
        var head = replay.Head ?? throw new ArgumentException("A job that was never opened has no standing.", nameof(replay));
        var facts = StandingFacts.Of(replay);
        var stores = replay.Course.Steps.Where(step => step.Phase != CoursePhase.Refit && step.Target is not null && step.Line.Store.Length > 0)
            .GroupBy(step => step.Target!.Name).ToDictionary(group => group.Key, group => group.Last().Line.Store, StringComparer.Ordinal);
        var bags = replay.WithoutSlips.Where(happened => happened is { Kind: EventKind.Bag, Bag: not null, Text.Length: > 0 })
            .GroupBy(happened => happened.Bag!.Value).ToDictionary(group => group.Key, group => group.Last().Text!);
        return new JobStatus
        {
            Job = head.Name,
            Title = head.Title,
            Machine = head.MachineTitle,
            Serial = head.Serial,
            Order = head.Order,
            State = JobLine.StateOf(replay.Closed is not null, replay.Paused),
            Events = replay.Events.Count,
            LastAt = replay.Events is [.., var last] ? last.At : null,
            LastHash = lastHash,
            Plan = replay.Course.Plan.Revision,
            Done = replay.Done.Count,
            Steps = replay.Course.Steps.Length,
            Open = [.. facts.NotWhole.Select(open => new StatusLine(open.Thing.Item.Name, open.Thing.Sort.ToString().ToLowerInvariant(), open.Thing.Title, open.State, stores.GetValueOrDefault(open.Thing.Item.Name, "")))],
            Unsafe = facts.Unsafe,
            Hidden = [.. replay.Machine.Hidden()],
            Bags = [.. facts.Bags.Select(bag => new StatusBag(bag.Number, bag.Count, [.. bag.Lines.Select(line => $"{line.Count} × {line.Title}, {line.From}")], bags.GetValueOrDefault(bag.Number, "")))],
            Pieces = facts.Pieces,
            Next = [.. replay.Next().Take(MostNext).Select(step => new StatusStep(step.Number, step.Card, step.Line.Text, NotBefore(replay, step)))],
            NeedsNewCards = replay.IsOffCourse,
            Unfollowed = replay.Unfollowed,
            Deviations = StatusDeviation.Of(replay),
            Fluids = [.. facts.Fluids.Where(balance => balance.Recovered.Length + balance.Charged.Length > 0)],
            BeforeClosing = replay.Closed is null ? JobClosing.Open(replay, facts) : [],
            Back = withWayBack && replay.Closed is null && !facts.NotWhole.IsEmpty ? Back(replay) : null,
        };
    }

    /// <summary>When what has to cure before a step will have; null where nothing has to.</summary>
    public static DateTimeOffset? NotBefore(JobReplay replay, CourseStep step)
    {
        ArgumentNullException.ThrowIfNull(replay);
        ArgumentNullException.ThrowIfNull(step);
        var ends = step.Line.WaitsForCureOf
            .Where(number => replay.Done.TryGetValue(number, out var done) && done.Event is not null && replay.Course.Step(number)?.Line.Cure is not null)
            .Select(number => Latest(replay.Done[number].Event!).AddSeconds(replay.Course.Step(number)!.Line.Cure!.Seconds)).ToList();
        return ends.Count == 0 ? null : ends.Max();
    }

    /// <summary>A tablet's clock may be behind: what cures ends by the later of the two.</summary>
    private static DateTimeOffset Latest(JobEvent happened) => happened.Logged > happened.At ? happened.Logged : happened.At;

    private static StatusBack? Back(JobReplay replay)
    {
        if (replay.Machine.WayHome() is not { } course)
        {
            return null;
        }

        var steps = course.Steps.Where(step => !course.Done.Contains(step.Number)).ToList();
        return new StatusBack(course.Again.Length, steps.Count, steps.Sum(step => step.Line.Seconds), [.. steps.Take(MostBack).Select(step => step.Line.Text)]);
    }
}
