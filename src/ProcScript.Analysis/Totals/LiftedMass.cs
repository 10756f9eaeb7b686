using System.Collections.Immutable;
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
    public static IReadOnlyDictionary<int, double> Of(IEnumerable<PlannedStep> steps)
    {
        var lifted = new Dictionary<int, double>();
        var moved = new HashSet<Part>();
        foreach (var step in steps)
        {
            if (step.Part is { } part && (Moves(step.Verb) || (step.Verb == Verb.Support && IsByHand(step.Details))))
            {
                Lift(step.Number, step.Verb, part, moved, lifted);
            }
        }

        return lifted;
    }

    /// <summary>The kilograms that each action lifts, by its number; actions that lift nothing of known mass are missing.</summary>
    public static Dictionary<int, double> Of(ImmutableArray<PerformedAction> actions)
    {
        var lifted = new Dictionary<int, double>();
        var moved = new HashSet<Part>();
        foreach (var action in actions)
        {
            if (action.Target is Part part && (Moves(action.Verb) || (action.Verb == Verb.Support && IsByHand(StepOrigin.Details(action)))))
            {
                Lift(action.Number, action.Verb, part, moved, lifted);
            }
        }

        return lifted;
    }

    private static bool Moves(Verb verb) => verb is Verb.Remove or Verb.Fit or Verb.Aside or Verb.Return;

    private static bool IsByHand(ActionDetails support) => support.Tools.IsEmpty;

    /// <param name="number">The number of the step.</param>
    /// <param name="verb">What it does.</param>
    /// <param name="part">The part that it lifts.</param>
    /// <param name="moved">What is not as at the start, where temporary parts are off and all others on.</param>
    /// <param name="lifted">The kilograms of all steps so far.</param>
    private static void Lift(int number, Verb verb, Part part, HashSet<Part> moved, Dictionary<int, double> lifted)
    {
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

    /// <summary>To the gram: what lies below is noise of the conversion of units.</summary>
    private static double ToTheGram(double kilograms) => Math.Round(kilograms, 3);

    private static double Inside(Part part, HashSet<Part> moved)
    {
        var kilograms = part.Mass?.BaseValue ?? 0;
        foreach (var child in part.Children)
        {
            if (moved.Contains(child) == child.IsTemporary)
            {
                kilograms += Inside(child, moved);
            }
        }

        return kilograms;
    }
}
