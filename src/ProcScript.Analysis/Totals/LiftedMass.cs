using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>
/// How heavy what a step lifts is: a part with all that is still inside it then. What goes aside or is propped by hand is
/// moved with all of it; a stand, a jack or another tool that props it bears it.
/// </summary>
internal static class LiftedMass
{
    /// <summary>The kilograms that each step lifts, by its number; steps that lift nothing of known mass are missing.</summary>
    public static IReadOnlyDictionary<int, double> Of(IEnumerable<PlannedStep> steps) =>
        Of(steps.Select(step => (step.Number, step.Verb, step.Part is { } part && Lifts(step.Verb, step.Details) ? part : null)));

    /// <summary>The kilograms that each action lifts, by its number; actions that lift nothing of known mass are missing.</summary>
    public static IReadOnlyDictionary<int, double> Of(IEnumerable<PerformedAction> actions) =>
        Of(actions.Select(action => (action.Number, action.Verb, action.Target is Part part && Lifts(action.Verb, StepOrigin.Details(action)) ? part : null)));

    private static bool Lifts(Verb verb, ActionDetails details) => verb switch
    {
        Verb.Remove or Verb.Fit or Verb.Aside or Verb.Return => true,
        Verb.Support => details.Tools.IsEmpty,
        _ => false,
    };

    private static Dictionary<int, double> Of(IEnumerable<(int Number, Verb Verb, Part? Part)> steps)
    {
        var lifted = new Dictionary<int, double>();
        // Temporary parts start off, all others on.
        var moved = new HashSet<Part>();
        foreach (var (number, verb, part) in steps)
        {
            if (part is null)
            {
                continue;
            }

            if (ToTheGram(Inside(part, moved)) is > 0 and var kilograms)
            {
                lifted.Add(number, kilograms);
            }

            if (verb == (part.IsTemporary ? Verb.Fit : Verb.Remove))
            {
                moved.Add(part);
            }
            else if (verb is Verb.Fit or Verb.Remove)
            {
                moved.Remove(part);
            }
        }

        return lifted;
    }

    /// <summary>To the gram: what lies below is noise of the conversion of units.</summary>
    private static double ToTheGram(double kilograms) => Math.Round(kilograms, 3);

    private static double Inside(Part part, HashSet<Part> moved) =>
        (part.Mass?.BaseValue ?? 0) + part.Children.Where(child => moved.Contains(child) == child.IsTemporary).Sum(child => Inside(child, moved));
}
