using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Crews;

/// <summary>
/// Keeps people out of a place that is full: a step holds as much room as it takes people. Of a step that takes more than there is room for, the
/// others lend a hand from outside.
/// </summary>
internal static class RoomUses
{
    /// <summary>The tasks, each with the room that it takes beside what it holds already.</summary>
    /// <param name="capacities">How much there is of what tasks hold already.</param>
    /// <param name="tasks">The tasks.</param>
    /// <param name="steps">The steps of each.</param>
    public static (ImmutableArray<int> Capacities, ImmutableArray<CrewTask> Tasks) Add(
        ImmutableArray<int> capacities, ImmutableArray<CrewTask> tasks, ImmutableArray<ImmutableArray<PlannedStep>> steps)
    {
        var places = steps.SelectMany(some => some).Select(step => step.Place).OfType<Workplace>().Distinct().ToList();
        return places.Count == 0
            ? (capacities, tasks)
            : (
                [.. capacities, .. places.Select(place => place.Room)],
                [.. tasks.Select((task, at) => task with { Uses = [.. task.Uses, .. Uses(at)] })]);

        IEnumerable<CrewUse> Uses(int at) => steps[at].Where(step => step.Place is not null).GroupBy(step => step.Place!).Select(same =>
            new CrewUse(capacities.Length + places.IndexOf(same.Key), Math.Min(same.Key.Room, same.Max(step => step.People))));
    }
}
