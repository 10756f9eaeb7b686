using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Tools;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Catalog;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What a card says of things that go back to where they were, of what is measured on them, and of what serves again.</summary>
internal static class OwnPlaceWords
{
    /// <summary>What to see to at a step, a line each.</summary>
    public static IEnumerable<string> Ticks(PlannedStep step)
    {
        if (Order(step) is { } order)
        {
            yield return order;
        }

        if (Measured(step) is { } measured && IsPutBack(step) && step.Mirror > 0 && !IsNew(step))
        {
            yield return $"The {measured} is written down at step {step.Mirror}: {(step.Count > 1 ? "each goes" : "it goes")} back to the same place.";
        }

        if (step is { Closes: true, Joint: { Reuse: { } reuse, SingleUse: false } joint } && !IsNew(step) && (joint.Kind.SingleUse || joint.Stretch || joint.IsLock))
        {
            yield return $"Looked over, and fit to serve again: {reuse}";
        }

        if (IsRunOn(step) && !IsNew(step))
        {
            yield return "Each still has its running torque. One that has less is scrap: a new one goes in.";
        }
    }

    /// <summary>What to write down at a step.</summary>
    public static IEnumerable<PlanReading> Notes(PlannedStep step)
    {
        if (Measured(step) is { } measured && step.Fate != Fate.Discarded)
        {
            if (step.Opens || step.Verb == Verb.Remove)
            {
                yield return new PlanReading(step.Count > 1 ? $"Measure the {measured} of each, place by place" : $"Measure the {measured}", "");
            }
            else if (IsPutBack(step) && IsNew(step))
            {
                yield return new PlanReading($"New, of the {measured} written down at step {step.Mirror}, or measured anew", "");
            }
        }

        if (IsRunOn(step) && step.Joint!.Prevailing is { } prevailing)
        {
            yield return new PlanReading("Running torque", prevailing.Print());
            if (ToolList.Torque(step) is not null)
            {
                yield return new PlanReading("Wrench set to the torque and the running torque", "");
            }
        }
    }

    private static string? Order(PlannedStep step) => step switch
    {
        _ when IsNew(step) || step.Fate != Fate.GoesBack => null,
        { Joint: { KeepInOrder: true, Kind.Captive: true } } => null,
        { Opens: true, Joint: { KeepInOrder: true, Kind.Category: KindCategory.Connector or KindCategory.Line } } => "Keep in order: tag each end.",
        { Opens: true, Joint.KeepInOrder: true, Count: > 1 } => "Keep in order as they sat: stick them through a card, or number them.",
        { Opens: true, Joint.KeepInOrder: true } => "Keep in order: note where it sat.",
        { Closes: true, Joint.KeepInOrder: true, Count: > 1 } => "Each goes back into its own place.",
        { Closes: true, Joint.KeepInOrder: true } => "It goes back into its own place.",
        { Verb: Verb.Remove, Part.KeepInOrder: true } => "Keep in order: lay it out as it sat, apart from its like.",
        { Verb: Verb.Fit, Part.KeepInOrder: true } => "It goes back into its own place.",
        _ => null,
    };

    private static string? Measured(PlannedStep step) => step.Target?.Measured;

    private static bool IsPutBack(PlannedStep step) => step.Closes || step.Verb == Verb.Fit;

    private static bool IsNew(PlannedStep step) => step.Fate == Fate.Renewed || (step.Joint is { } joint && OrderList.IsScrap(step.Fate, joint));

    /// <summary>Whether a self-locking fastener is turned on to its seat.</summary>
    private static bool IsRunOn(PlannedStep step) => step is { Joint.Prevailing: not null, LeavesSlack: false } && (step.Closes || step.Verb == Verb.Tighten);
}
