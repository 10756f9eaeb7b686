using ProcScript.Jobs.Journals;

namespace ProcScript.Jobs.Standing;

/// <summary>
/// A job in a list, as its journal alone tells it: to play thousands takes minutes. So of deviations it counts what is one by itself, and not what only
/// the machine's states show, such as a step that was done out of order.
/// </summary>
/// <param name="Job">Its name in the store.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Machine">What people call the machine.</param>
/// <param name="Serial">Which machine it is.</param>
/// <param name="Order">The work order.</param>
/// <param name="State"><c>open</c>, <c>paused</c> or <c>closed</c>.</param>
/// <param name="Done">How many steps are done; where cards were made anew, of these.</param>
/// <param name="Steps">How many there are; where cards were made anew, how many these had left to do.</param>
/// <param name="Deviations">How often something went otherwise than planned.</param>
/// <param name="PausedBy">Who has stopped it; null where nobody has.</param>
/// <param name="To">To whom it was handed over; null where it was to nobody.</param>
/// <param name="Why">Why it stands; null where nobody said.</param>
/// <param name="By">Who did something last.</param>
/// <param name="LastAt">When that was written down, by the clock of the journal's keeper.</param>
/// <param name="Events">How many events its journal has.</param>
public sealed record JobLine(
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
    /// <summary>The line of a job.</summary>
    /// <param name="job">Its name in the store.</param>
    /// <param name="events">Its events, in order.</param>
    /// <returns>Null where they do not begin with a job that is opened.</returns>
    public static JobLine? Of(string job, IReadOnlyList<JobEvent> events)
    {
        ArgumentNullException.ThrowIfNull(events);
        if (events is not [{ Job: { } head }, ..])
        {
            return null;
        }

        var slips = JobEvent.SlipsOf(events);
        var (plan, steps, deviations, isClosed) = (head.Revision, head.Steps, 0, false);
        JobEvent? paused = null;
        HashSet<int> done = [];
        foreach (var happened in events.Where(happened => !slips.Contains(happened.Number)))
        {
            deviations += happened.Kind.IsDeviation ? 1 : 0;
            switch (happened.Kind)
            {
                case EventKind.Done when happened.Step is { } step && (happened.Plan ?? plan) == plan:
                    done.Add(step);
                    break;
                case EventKind.Undone when happened.Step is { } step && (happened.Plan ?? plan) == plan:
                    done.Remove(step);
                    break;
                case EventKind.Pause or EventKind.HandOver:
                    paused = happened;
                    break;
                case EventKind.Resume:
                    paused = null;
                    break;
                case EventKind.Replanned or EventKind.Rebased when happened.Plan is { } revision:
                    (plan, steps) = (revision, happened.Count ?? head.Steps);
                    done.Clear();
                    break;
                case EventKind.Closed:
                    (isClosed, paused) = (true, null);
                    break;
            }
        }

        return new JobLine(
            job,
            head.Title,
            head.MachineTitle,
            head.Serial,
            head.Order,
            StateOf(isClosed, paused),
            done.Count,
            steps,
            deviations,
            paused?.By,
            paused?.To,
            paused?.Text,
            events[^1].By,
            events[^1].Logged,
            events.Count);
    }

    /// <summary>The word for how a job stands: <c>open</c>, <c>paused</c> or <c>closed</c>.</summary>
    /// <param name="isClosed">Whether it was closed.</param>
    /// <param name="paused">The event that has stopped it; null where the work goes on.</param>
    internal static string StateOf(bool isClosed, JobEvent? paused) => isClosed ? "closed" : paused is not null ? "paused" : "open";
}
