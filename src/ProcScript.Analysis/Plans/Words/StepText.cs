using System.Globalization;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What to do, in plain imperative words with quantity and size.</summary>
internal static class StepText
{
    /// <summary>The text of a step: <c>Undo 4 × M10 × 30 bolt</c>.</summary>
    public static string Of(PlannedStep step) =>
        step switch
        {
            { Target: null } => Phrase(step.Verb, Topic(step)),
            { Cap: { } cap } => Capped(step, ItemWords.Pieces(step.Count, ItemWords.Of(cap.Tool))),
            { Verb: Verb.Renew, Joint: { IsTemporary: true } joint } => $"Put on {ItemWords.Pieces(step.Count, joint.Kind.Title)}",
            { Verb: Verb.Support, Phase: PlanPhase.Refit } => string.Format(CultureInfo.InvariantCulture, SupportReady, Object(step)),
            { Joint: { IsLock: true, Over: { } locked }, Opens: true } => $"Unlock the {locked.Kind.Title}: {LowerFirst(Phrase(step.Verb, Object(step)))}",
            { Joint: { IsLock: true, Over: { } locked } pin, Closes: true } => $"Lock the {locked.Kind.Title} with {ItemWords.Pieces(step.Count, NewOrOld(pin, step.Fate))}",
            { Verb: Verb.Fasten, LeavesSlack: true } => Phrase(Verb.Snug, Object(step)) + Addition(step),
            _ => Phrase(step.Verb, Object(step)) + Addition(step),
        };

    private static string Capped(PlannedStep step, string caps) => step switch
    {
        { Verb: Verb.Cap, Part: { } part } => $"Cap the hole of the {part.Title}: {caps}",
        { Verb: Verb.Cap } => $"Cap the open ends: {caps}",
        { Part: { } part } => $"Take the cap off the hole of the {part.Title}: {caps}",
        _ => $"Take the caps off the open ends: {caps}",
    };

    /// <summary>An action on all of an item: <c>Remove the roof panel</c>.</summary>
    public static string Of(Verb verb, MachineItem item) =>
        Phrase(verb, item is Joint joint ? ItemWords.Pieces(joint.Count, joint.Kind.Title) : $"the {item.Title}");

    /// <summary>An action by its verb and target; a measurement, task or check by its verb alone.</summary>
    public static string Of(NamedAction action) =>
        action.Target is { } item ? Of(action.Verb, item) : Phrase(action.Verb, "").TrimEnd(' ', ':');

    /// <summary>The same within a sentence: <c>remove the roof panel</c>.</summary>
    public static string Within(NamedAction action) => LowerFirst(Of(action));

    /// <summary>The author's words; those that a verb goes before begin small.</summary>
    private static string Topic(PlannedStep step) => step.Verb == Verb.Measure ? LowerFirst(step.Text ?? "") : step.Text ?? "";

    /// <summary>Begins small, unless the first word is an abbreviation.</summary>
    private static string LowerFirst(string text) =>
        text.Length > 1 && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    private static string Phrase(Verb verb, string target) =>
        string.Format(CultureInfo.InvariantCulture, ActionTable.Row(verb).Phrase, target);

    private static string NewOrOld(Joint pin, Fate fate) => pin.SingleUse || fate == Fate.Renewed ? $"new {pin.Kind.Title}" : pin.Kind.Title;

    /// <summary>What a support of the refit is for: the part is not there yet.</summary>
    private const string SupportReady = "Set the support ready for {0}";

    private static string Object(PlannedStep step) => step switch
    {
        { Joint: { } joint } => ItemWords.Pieces(step.Count, joint.Kind.Title),
        { Verb: Verb.Fit, Fate: Fate.Renewed } => $"the new {step.Target!.Title}",
        _ => $"the {step.Target!.Title}",
    };

    private static string Addition(PlannedStep step) => step switch
    {
        { Verb: Verb.Set, Target: Control control } => $" to {control.Positions[step.Position].Replace('_', ' ')}",
        { Closes: true, Renewed: > 0 } when step.Renewed == step.Count => step.Count == 1 ? ": a new one" : ": all new",
        { Closes: true, Renewed: > 0 } => $": {step.Count - step.Renewed} old, {step.Renewed} new",
        { Verb: Verb.Replace, Joint: { } joint } when step.Count < joint.Count => $" (of {joint.Count})",
        { Verb: Verb.Fill, Charge: { } charge } => $" to {charge.Print()}",
        _ => "",
    };
}
