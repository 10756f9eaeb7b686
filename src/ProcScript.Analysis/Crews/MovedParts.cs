using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Crews;

/// <summary>
/// Keeps hands from what is being moved: while a part comes off, goes aside or goes back, nobody works on it, on what lies in it or on what ties it.
/// Which comes first is for the order to say.
/// </summary>
internal static class MovedParts
{
    // More than any crew has hands: who moves a part takes all of it, who works on it takes one.
    private const int Whole = 1000;

    /// <summary>The tasks, each with what it touches of parts that others move.</summary>
    /// <param name="tasks">The tasks.</param>
    /// <param name="steps">The steps of each.</param>
    public static (ImmutableArray<int> Capacities, ImmutableArray<CrewTask> Tasks) KeepApart(
        ImmutableArray<CrewTask> tasks, ImmutableArray<ImmutableArray<PlannedStep>> steps)
    {
        var moved = steps.SelectMany(some => some).Where(Moves).Select(step => step.Part!).Distinct().ToList();
        var uses = tasks.Select(_ => new Dictionary<int, int>()).ToArray();
        for (var task = 0; task < tasks.Length; task++)
        {
            foreach (var step in steps[task])
            {
                foreach (var part in Touched(step))
                {
                    if (moved.IndexOf(part) is >= 0 and var resource)
                    {
                        var amount = Moves(step) && step.Part == part ? Whole : 1;
                        uses[task][resource] = Math.Max(amount, uses[task].GetValueOrDefault(resource));
                    }
                }
            }
        }

        return (
            [.. moved.Select(_ => Whole)],
            [.. tasks.Select((task, at) => task with { Uses = [.. uses[at].OrderBy(use => use.Key).Select(use => new CrewUse(use.Key, use.Value))] })]);
    }

    private static bool Moves(PlannedStep step) =>
        step.Part is not null && step.Verb is Verb.Remove or Verb.Fit or Verb.Aside or Verb.Return or Verb.Support or Verb.Unsupport;

    /// <summary>The parts that a step works on: its own, those at the ends of its joint, and all that these lie in.</summary>
    private static IEnumerable<Part> Touched(PlannedStep step) => (step.Target switch
    {
        Part part => Around(part),
        Joint joint => [.. Around(joint.Owner), .. Around(joint.Other)],
        _ => [],
    }).Distinct();

    private static IEnumerable<Part> Around(Part? innermost)
    {
        for (var part = innermost; part is not null; part = part.Parent)
        {
            yield return part;
        }
    }
}
