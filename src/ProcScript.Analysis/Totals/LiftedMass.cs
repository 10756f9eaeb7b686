using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>How heavy what a step lifts is: a part with all that is still inside it then.</summary>
internal static class LiftedMass
{
    /// <summary>The kilograms that each step lifts, by its number; steps that lift nothing of known mass are missing.</summary>
    public static IReadOnlyDictionary<int, double> Of(IEnumerable<PlannedStep> steps)
    {
        var lifted = new Dictionary<int, double>();
        var off = new HashSet<Part>();
        foreach (var step in steps)
        {
            if (step.Part is not { } part || step.Verb is not (Verb.Remove or Verb.Fit))
            {
                continue;
            }

            if (ToTheGram(Inside(part, off)) is > 0 and var kilograms)
            {
                lifted.Add(step.Number, kilograms);
            }

            if (step.Verb == Verb.Remove)
            {
                off.Add(part);
            }
            else
            {
                off.Remove(part);
            }
        }

        return lifted;
    }

    /// <summary>To the gram: what lies below is noise of the conversion of units.</summary>
    private static double ToTheGram(double kilograms) => Math.Round(kilograms, 3);

    private static double Inside(Part part, HashSet<Part> off) =>
        (part.Mass?.BaseValue ?? 0) + part.Children.Where(child => !off.Contains(child)).Sum(child => Inside(child, off));
}
