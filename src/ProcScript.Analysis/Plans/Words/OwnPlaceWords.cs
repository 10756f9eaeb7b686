using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Tools;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Catalog;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What a card says of things that go back to where they were, of what is measured on them, and of what serves again.</summary>
internal static class OwnPlaceWords
{
    /// <summary>What to see to at a step, a line each.</summary>
    public static IEnumerable<string> Ticks(PlannedStep step)
    {
        if (Order(step) is { } order)
        {
            yield return step.Book.Say(order);
        }

        if (Measured(step) is { } measured && IsPutBack(step) && step.Mirror > 0 && !IsNew(step))
        {
            yield return step.Book.Say("tick.measured", ("what", measured), ("step", step.Mirror), ("count", step.Count));
        }

        if (step is { Closes: true, Joint: { Reuse: { } reuse, SingleUse: false } joint } && !IsNew(step) && (joint.Kind.SingleUse || joint.Stretch || joint.IsLock))
        {
            yield return step.Book.Say("tick.serves-again", ("why", reuse));
        }

        if (IsRunOn(step) && !IsNew(step))
        {
            yield return step.Book.Say("tick.running-torque");
        }

        // What comes off and what goes in are steps of their own: where nothing else is said, the work between is to see that it is the right one.
        if (step is { Verb: Verb.Replace, Details: { How.IsEmpty: true, Checks.IsEmpty: true } })
        {
            yield return step.Book.Say("tick.compare", ("count", Math.Max(1, step.Count)));
        }
    }

    /// <summary>What to write down at a step.</summary>
    public static IEnumerable<PlanReading> Notes(PlannedStep step)
    {
        if (Measured(step) is { } measured && step.Fate != Fate.Discarded)
        {
            if (step.Opens || step.Verb == Verb.Remove)
            {
                yield return new PlanReading(step.Book.Say("note.measure", ("what", measured), ("count", step.Count)), "");
            }
            else if (IsPutBack(step) && IsNew(step))
            {
                yield return new PlanReading(step.Book.Say("note.new", ("what", measured), ("step", step.Mirror)), "");
            }
        }

        if (IsRunOn(step) && step.Joint!.Prevailing is { } prevailing)
        {
            yield return new PlanReading(step.Book.Say("note.running-torque"), step.Book.Print(prevailing));
            if (ToolList.Torque(step) is not null)
            {
                yield return new PlanReading(step.Book.Say("note.wrench-set"), "");
            }
        }
    }

    /// <summary>The message about the order in which things lie; null where there is none.</summary>
    private static string? Order(PlannedStep step) => step switch
    {
        _ when IsNew(step) || step.Fate != Fate.GoesBack => null,
        { Joint: { KeepInOrder: true, Kind.Captive: true } } => null,
        { Opens: true, Joint: { KeepInOrder: true, Kind.Category: KindCategory.Connector or KindCategory.Line } } => "tick.order.tag-ends",
        { Opens: true, Joint.KeepInOrder: true, Count: > 1 } => "tick.order.number",
        { Opens: true, Joint.KeepInOrder: true } => "tick.order.note",
        { Closes: true, Joint.KeepInOrder: true, Count: > 1 } => "tick.order.each-back",
        { Closes: true, Joint.KeepInOrder: true } => "tick.order.back",
        { Verb: Verb.Remove, Part.KeepInOrder: true } => "tick.order.lay-out",
        { Verb: Verb.Fit, Part.KeepInOrder: true } => "tick.order.back",
        _ => null,
    };

    private static string? Measured(PlannedStep step) => step.Target?.Measured;

    private static bool IsPutBack(PlannedStep step) => step.Closes || step.Verb == Verb.Fit;

    private static bool IsNew(PlannedStep step) => step.Fate == Fate.Renewed || (step.Joint is { } joint && OrderList.IsScrap(step.Fate, joint));

    /// <summary>Whether a self-locking fastener is turned on to its seat.</summary>
    private static bool IsRunOn(PlannedStep step) => step is { Joint.Prevailing: not null, LeavesSlack: false } && (step.Closes || step.Verb == Verb.Tighten);
}
