using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>Which hazards the steps of a job touch, and before which of them the usual cautions stand.</summary>
internal static class HazardSteps
{
    /// <summary>The hazards, in the order they are met, with the items that are marked.</summary>
    public static ImmutableArray<PlanHazard> Touched(ImmutableArray<PlannedStep> steps) =>
    [
        .. from item in steps.Select(step => step.Target).OfType<MachineItem>()
           from hazard in item.Hazards
           group item by hazard into marked
           let caution = UsualCautions.Of(marked.Key)
           select new PlanHazard(HazardWords.Of(marked.Key), caution.Title, caution.Text, [.. marked.Select(ItemWords.Whole).Distinct()]),
    ];

    /// <summary>
    /// By the number of the step: the hazards that the usual caution is given for. Each card tells a hazard once, before the first step that
    /// opens or moves what is marked; where the author's own alert there says it, that is enough for the card.
    /// </summary>
    public static ILookup<int, Hazard> Cautioned(ImmutableArray<PlannedStep> steps)
    {
        var told = new HashSet<(PlanPhase Phase, int Card, Hazard Hazard)>();
        var cautioned = new List<(int Step, Hazard Hazard)>();
        foreach (var step in steps)
        {
            foreach (var hazard in step.Target?.Hazards ?? [])
            {
                // What was hot has cooled by the time it goes back.
                if ((hazard != Hazard.HotSurface || step.Phase != PlanPhase.Refit)
                    && told.Add((step.Phase, step.Card, hazard))
                    && !StepProse.Written(step).Any(alert => UsualCautions.IsSaidBy(alert, hazard)))
                {
                    cautioned.Add((step.Number, hazard));
                }
            }
        }

        return cautioned.ToLookup(one => one.Step, one => one.Hazard);
    }
}
