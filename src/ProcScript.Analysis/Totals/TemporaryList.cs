using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>What is on the machine for the job alone: temporary parts and caps, each with the steps at which it goes on and comes off.</summary>
internal static class TemporaryList
{
    /// <summary>Temporary parts in the order in which they first go on, then caps.</summary>
    public static ImmutableArray<PlanTemporary> Of(ImmutableArray<PlannedStep> steps) =>
    [
        .. steps.Where(step => step.Part is { IsTemporary: true } && step.Verb is Verb.Fit or Verb.Remove).GroupBy(step => step.Part!, Part),
        .. steps.Where(step => step.Verb == Verb.Cap).GroupBy(step => step.Target!, Caps),
    ];

    private static PlanTemporary Part(Part part, IEnumerable<PlannedStep> moves)
    {
        var numbers = moves.Select(step => step.Number).ToList();
        return new PlanTemporary(
            part.Title,
            1,
            string.Join(", ", part.Joints.Where(joint => joint is { IsTemporary: true, Role: JointRole.Held }).Select(joint => ItemWords.Pieces(joint.Count, joint.Kind.Title))),
            false,
            // It starts out and ends out, so it goes on and comes off by turns.
            [.. numbers.Where((_, index) => index % 2 == 0)],
            [.. numbers.Where((_, index) => index % 2 != 0)]);
    }

    private static PlanTemporary Caps(MachineItem item, IEnumerable<PlannedStep> capped)
    {
        var steps = capped.ToList();
        return new PlanTemporary(
            ItemWords.Of(steps[0].Cap!.Tool, steps[0].Book),
            steps.Sum(step => step.Count),
            item is Joint joint ? ItemWords.Place(joint) : steps[0].Book.Say("place.hole", ("part", item.Title)),
            true,
            [.. steps.Select(step => step.Number)],
            [.. steps.Select(step => step.Mirror)]);
    }
}
