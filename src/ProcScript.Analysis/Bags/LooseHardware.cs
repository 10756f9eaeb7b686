using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Bags;

/// <summary>Pieces that come off in one step and go back in another.</summary>
/// <param name="Phase">Where they come off.</param>
/// <param name="Card">The card of the phase on which they come off.</param>
/// <param name="Joint">The joint or cover that they are of.</param>
/// <param name="Count">How many.</param>
/// <param name="StripStep">The step that takes them off.</param>
/// <param name="RefitStep">The step that puts them back.</param>
/// <param name="RefitCard">The card of the refit on which they go back.</param>
internal readonly record struct LooseHardware(
    PlanPhase Phase,
    int Card,
    Joint Joint,
    int Count,
    int StripStep,
    int RefitStep,
    int RefitCard)
{
    /// <summary>Whether each goes back into the place that it came from.</summary>
    public bool IsInOrder => Joint.KeepInOrder;

    /// <summary>The author's own name for their bag; null where the bag is for the compiler to choose.</summary>
    public string? OwnBag { get; init; }

    /// <summary>The kinds of what a strip takes off to lie loose, in the order in which they come off; a kind may come several times.</summary>
    public static IEnumerable<Kind> Kinds(StripRun strip) =>
        strip.Actions.Where(action => IsLoose(action, strip)).Select(action => ((Joint)action.Target!).Kind);

    /// <summary>Whether an action of a strip takes off pieces that go back.</summary>
    public static bool IsLoose(PerformedAction action, StripRun strip) =>
        action is { Verb: Verb.Undo or Verb.Release, Target: Joint { IsTemporary: false } joint }
        && IsKept(joint.Kind)
        && !joint.SingleUse
        && !strip.Discarded.Contains(joint)
        && !strip.Replaced.Contains(joint);

    /// <summary>What a job takes off and puts back, in the order in which it comes off. Connectors and lines stay on their ends.</summary>
    /// <param name="steps">The steps; a step's number is its index and one.</param>
    public static IEnumerable<LooseHardware> Of(IReadOnlyList<PlannedStep> steps) =>
        from step in steps
        where step.Opens
        let joint = step.Joint
        where joint is { IsTemporary: false } && IsKept(joint.Kind)
        where !OrderList.IsScrap(step.Fate, joint) && step.Count > step.Renewed
        select new LooseHardware(
            step.Phase,
            step.Card,
            joint,
            step.Count - step.Renewed,
            step.Number,
            step.Mirror,
            step.Mirror > 0 ? steps[step.Mirror - 1].Card : -1)
        {
            OwnBag = step.Details.Bag,
        };

    private static bool IsKept(Kind kind) => kind is { Captive: false, Category: KindCategory.Fastener or KindCategory.Clip };
}
