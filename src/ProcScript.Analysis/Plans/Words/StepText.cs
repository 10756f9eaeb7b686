using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What to do, in the plain words of the trade, with quantity and size.</summary>
internal static class StepText
{
    /// <summary>The text of a step: <c>Undo 4 × M10 × 30 bolt</c>.</summary>
    public static string Of(PlannedStep step)
    {
        var book = step.Book;
        return step switch
        {
            { Target: null } => Phrase(step.Verb, Topic(step), book),
            { Cap: { } cap } => Capped(step, ItemWords.Pieces(step.Count, ItemWords.Of(cap.Tool, book))),
            { Verb: Verb.Renew, Joint: { IsTemporary: true } joint } => book.Say("step.put-on", ("what", ItemWords.Pieces(step.Count, joint.Kind.Title))),
            { Verb: Verb.Support, Phase: PlanPhase.Refit } => book.Say("step.support-ready", ("what", Object(step))),
            { Joint: { IsLock: true, Over: { } locked }, Opens: true } =>
                book.Say("step.unlock", ("what", locked.Kind.Title), ("how", book.Within(Phrase(step.Verb, Object(step), book)))),
            { Joint: { IsLock: true, Over: { } locked } pin, Closes: true } =>
                book.Say("step.lock", ("what", locked.Kind.Title), ("pieces", ItemWords.Pieces(step.Count, NewOrOld(pin, step.Fate, book)))),
            { Verb: Verb.Fasten, LeavesSlack: true } => WithAddition(Phrase(Verb.Snug, Object(step), book), step),
            _ => WithAddition(Phrase(step.Verb, step.Target, Object(step), book), step),
        };
    }

    /// <summary>An action on all of an item: <c>Remove the roof panel</c>.</summary>
    public static string Of(Verb verb, MachineItem item, Wordbook book) => Phrase(
        verb,
        item,
        item is Joint joint ? ItemWords.Pieces(joint.Count, joint.Kind.Title) : book.Say("item.the", ("title", item.Title)),
        book);

    /// <summary>An action by its verb and target; a measurement, task or check by its verb alone.</summary>
    public static string Of(NamedAction action, Wordbook book) =>
        action.Target is { } item ? Of(action.Verb, item, book) : Phrase(action.Verb, "", book).Trim(' ', ':', '\u00a0');

    /// <summary>The same within a sentence: <c>remove the roof panel</c>.</summary>
    public static string Within(NamedAction action, Wordbook book) => book.Within(Of(action, book));

    private static string Capped(PlannedStep step, string caps) => step switch
    {
        { Verb: Verb.Cap, Part: { } part } => step.Book.Say("step.cap-hole", ("part", part.Title), ("caps", caps)),
        { Verb: Verb.Cap } => step.Book.Say("step.cap-ends", ("caps", caps)),
        { Part: { } part } => step.Book.Say("step.uncap-hole", ("part", part.Title), ("caps", caps)),
        _ => step.Book.Say("step.uncap-ends", ("caps", caps)),
    };

    /// <summary>The author's words; those that a verb goes before begin small.</summary>
    private static string Topic(PlannedStep step) => step.Verb == Verb.Measure ? step.Book.Within(step.Text ?? "") : step.Text ?? "";

    private static string Phrase(Verb verb, string what, Wordbook book) => book.Say($"verb.{ActionTable.Row(verb).Word}", ("what", what));

    /// <summary>The same of an item, which may have another usual verb: a refrigerant is recovered, and not emptied.</summary>
    private static string Phrase(Verb verb, MachineItem? item, string what, Wordbook book) =>
        item is not null && Own(verb, item) is { Length: > 0 } own ? book.Say("verb-of-author", ("verb", Capital(own)), ("what", what))
        : item is Fluid fluid && FluidSorts.Verb(fluid, verb) is { } usual ? book.Say($"verb-of-fluid.{usual}", ("what", what)) : Phrase(verb, what, book);

    /// <summary>The author's own verb for it; null where there is none.</summary>
    private static string? Own(Verb verb, MachineItem item)
    {
        var verbs = item switch
        {
            Joint joint => joint.Kind.Verbs,
            Energy energy => energy.Verbs,
            Fluid fluid => fluid.Verbs,
            _ => null,
        };
        return verb == ActionTable.Opening(item).Verb ? verbs?.Off : verb == ActionTable.Closing(item).Verb ? verbs?.On : null;
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string NewOrOld(Joint pin, Fate fate, Wordbook book) =>
        pin.SingleUse || fate == Fate.Renewed ? book.Say("item.new", ("title", pin.Kind.Title)) : pin.Kind.Title;

    private static string Object(PlannedStep step) => step switch
    {
        { Joint: { } joint } => ItemWords.Pieces(step.Count, joint.Kind.Title),
        { Verb: Verb.Fit, Fate: Fate.Renewed } => step.Book.Say("item.the-new", ("title", step.Target!.Title)),
        _ => step.Book.Say("item.the", ("title", step.Target!.Title)),
    };

    private static string WithAddition(string text, PlannedStep step) => step switch
    {
        { Verb: Verb.Set, Target: Control control } => step.Book.Say("step.to-position", ("what", Object(step)), ("position", ItemWords.Position(control, step.Position))),
        { Closes: true, Renewed: > 0 } when step.Renewed == step.Count => step.Book.Say("step.all-new", ("step", text), ("count", step.Count)),
        { Closes: true, Renewed: > 0 } =>
            step.Book.Say("step.old-and-new", ("step", text), ("old", step.Count - step.Renewed), ("new", step.Renewed)),
        { Verb: Verb.Replace, Joint: { } joint } when step.Count < joint.Count => step.Book.Say("step.of-all", ("step", text), ("count", joint.Count)),
        { Verb: Verb.Fill, Charge: { } charge } => step.Book.Say("step.to-charge", ("step", text), ("amount", step.Book.Print(charge))),
        _ => text,
    };
}
