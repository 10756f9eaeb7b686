using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Totals;

/// <summary>Pieces that come off in one step and go back in another.</summary>
/// <param name="Phase">Where they come off.</param>
/// <param name="Card">The card of the phase on which they come off.</param>
/// <param name="Joint">The joint or cover that they are of.</param>
/// <param name="Count">How many.</param>
/// <param name="StripStep">The step that takes them off.</param>
/// <param name="RefitStep">The step that puts them back.</param>
internal readonly record struct LooseHardware(PlanPhase Phase, int Card, Joint Joint, int Count, int StripStep, int RefitStep)
{
    /// <summary>What a job takes off and puts back, in the order in which it comes off. Connectors and lines stay on their ends.</summary>
    public static IEnumerable<LooseHardware> Of(IEnumerable<PlannedStep> steps) =>
        from step in steps
        where step.Opens
        let joint = step.Joint
        where joint is { Kind: { Captive: false, Category: KindCategory.Fastener or KindCategory.Clip } }
        where !OrderList.IsScrap(step.Fate, joint.Kind)
        select new LooseHardware(step.Phase, step.Card, joint, step.Count, step.Number, step.Mirror);
}
