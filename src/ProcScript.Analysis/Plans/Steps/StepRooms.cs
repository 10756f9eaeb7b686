using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// Says in which place each step is done: what the step says itself, else what its item does, else the part around it. What lies on the bench is
/// worked on there, whatever the item says; a part that comes off or goes in is still in its place.
/// </summary>
internal static class StepRooms
{
    /// <summary>The steps, each with its place.</summary>
    public static IEnumerable<PlannedStep> Add(ImmutableArray<PlannedStep> steps, Machine machine)
    {
        if (machine.Places.IsEmpty)
        {
            return steps;
        }

        var isOut = machine.Parts.Where(part => part.IsTemporary).ToHashSet();
        var placed = new List<PlannedStep>(steps.Length);
        foreach (var step in steps)
        {
            var place = step.Details.In ?? (step.Target is { } item && !IsOnBench(step, isOut) ? Of(item) : null);
            placed.Add(place is null || place == Workplace.None ? step : step with { Place = place });
            if (step is { Part: { } part, Verb: Verb.Remove or Verb.Discard })
            {
                isOut.Add(part);
            }
            else if (step is { Part: { } fitted, Verb: Verb.Fit })
            {
                isOut.Remove(fitted);
            }
        }

        return placed;
    }

    /// <summary>The place of an item in the machine; null where nothing is said.</summary>
    public static Workplace? Of(MachineItem? item) => item is null ? null : item.In ?? (item switch
    {
        Joint { Over: { } under } => Of(under),
        Joint joint => Of(joint.Owner),
        Part part => Of(part.Parent),
        _ => null,
    });

    private static bool IsOnBench(PlannedStep step, HashSet<Part> isOut)
    {
        var around = step.Target switch
        {
            Joint joint => joint.Owner,
            Part part when step.Verb is Verb.Remove or Verb.Fit or Verb.Cap or Verb.Uncap => part.Parent,
            Part part => part,
            _ => null,
        };
        for (; around is not null; around = around.Parent)
        {
            if (isOut.Contains(around))
            {
                return true;
            }
        }

        return false;
    }
}
