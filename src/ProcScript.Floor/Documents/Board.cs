using System.Collections.Immutable;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;

namespace ProcScript.Floor.Documents;

/// <summary>The jobs of a shop.</summary>
/// <param name="Jobs">A line each: what was worked on last comes first.</param>
/// <param name="Unreadable">The jobs that cannot be read, each with the reason.</param>
/// <param name="Time">The server's clock.</param>
public sealed record Board(ImmutableArray<BoardLine> Jobs, ImmutableArray<string> Unreadable, DateTimeOffset Time);

/// <summary>A job on the board.</summary>
/// <param name="Job">Its name in the store.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Machine">What people call the machine.</param>
/// <param name="Serial">Which machine it is.</param>
/// <param name="Order">The work order.</param>
/// <param name="State"><c>open</c>, <c>paused</c> or <c>closed</c>.</param>
/// <param name="Done">How many steps are done.</param>
/// <param name="Steps">How many there are.</param>
/// <param name="Deviations">How often something went otherwise than planned.</param>
/// <param name="PausedBy">Who has stopped it; null where nobody has.</param>
/// <param name="To">To whom it was handed over; null where it was to nobody.</param>
/// <param name="Why">Why it stands; null where nobody said.</param>
/// <param name="By">Who did something last.</param>
/// <param name="LastAt">When that was written down, by the server's clock.</param>
/// <param name="Events">How many events its journal has.</param>
public sealed record BoardLine(
    string Job,
    string Title,
    string Machine,
    string Serial,
    string Order,
    string State,
    int Done,
    int Steps,
    int Deviations,
    string? PausedBy,
    string? To,
    string? Why,
    string By,
    DateTimeOffset LastAt,
    int Events)
{
    /// <summary>The line of a job that is played.</summary>
    /// <param name="job">Its name in the store.</param>
    /// <param name="replay">The job.</param>
    public static BoardLine Of(string job, JobReplay replay)
    {
        ArgumentNullException.ThrowIfNull(replay);
        return Of(job, replay.Head!, replay.Events, replay.Closed is not null, replay.Paused, replay.Done.Count, replay.Course.Steps.Length, replay.Deviations.Count);
    }

    /// <summary>
    /// The line of a job by its journal alone: to play thousands takes minutes. Of a job whose cards were made anew it counts the steps of the new
    /// ones only, and of deviations what is one by itself.
    /// </summary>
    /// <param name="job">Its name in the store.</param>
    /// <param name="events">The journal, which begins with a job that is opened.</param>
    public static BoardLine Of(string job, IReadOnlyList<JobEvent> events)
    {
        ArgumentNullException.ThrowIfNull(events);
        var head = events[0].Job!;
        var slips = events.Where(happened => happened is { Kind: EventKind.Undone, Event: not null }).Select(happened => happened.Event!.Value).ToHashSet();
        var (plan, deviations, closed) = (head.Revision, 0, false);
        JobEvent? paused = null;
        HashSet<int> done = [];
        foreach (var happened in events.Where(happened => !slips.Contains(happened.Number)))
        {
            switch (happened.Kind)
            {
                case EventKind.Done when happened.Step is { } step && (happened.Plan ?? plan) == plan:
                    done.Add(step);
                    break;
                case EventKind.Undone when happened.Step is { } step:
                    done.Remove(step);
                    break;
                case EventKind.Did or EventKind.Broke or EventKind.Missing or EventKind.Found:
                    deviations++;
                    break;
                case EventKind.Pause or EventKind.HandOver:
                    paused = happened;
                    break;
                case EventKind.Resume:
                    paused = null;
                    break;
                case EventKind.Replanned or EventKind.Rebased when happened.Plan is { } revision:
                    plan = revision;
                    done.Clear();
                    break;
                case EventKind.Closed:
                    (closed, paused) = (true, null);
                    break;
            }
        }

        return Of(job, head, events, closed, paused, done.Count, head.Steps, deviations);
    }

    private static BoardLine Of(string job, JobHead head, IReadOnlyList<JobEvent> events, bool closed, JobEvent? paused, int done, int steps, int deviations) => new(
        job,
        head.Title,
        head.MachineTitle,
        head.Serial,
        head.Order,
        closed ? "closed" : paused is not null ? "paused" : "open",
        done,
        steps,
        deviations,
        paused?.By,
        paused?.To,
        paused?.Text,
        events[^1].By,
        events[^1].Logged,
        events.Count);
}
