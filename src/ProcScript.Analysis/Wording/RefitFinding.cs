using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Wording;

/// <summary>Findings at actions of the refit, which no line of the text holds: they point at what the action comes from.</summary>
internal static class RefitFinding
{
    /// <summary>What to do where a test cannot stand at its place.</summary>
    public const string TestHelp =
        "a test needs whole what carries its power, and ends with the proof that this is off: put it where both can be had, or let "
        + "`while … open because \"…\"` in it name what may be open";

    /// <summary>A finding at the step whose inverse the action is, or at the rule that asks for it.</summary>
    public static Finding At(RuleInfo rule, RefitStep step, string message, string label, params IEnumerable<LabeledSpan> related) =>
        step.Origin switch
        {
            RuledCheck or RuledTest or TestStep or Retorqued => new Finding(rule, message, Placed(step.Origin).Source) { Related = [.. related] },
            PropAgain { Support: var support } when Step(support) is { } propped => StepFinding.At(rule, propped, message, label, related),
            Tightened { Undo: var undo } when Step(undo) is { } undone => StepFinding.At(rule, undone, message, label, related),
            InverseOf { Action: var action } when Step(action) is { } undone => StepFinding.At(rule, undone, message, label, related),
            InsertedSet { Undoes: { } action } when Step(action) is { } undone => StepFinding.At(rule, undone, message, label, related),
            InsertedSet { For.Declared: { } condition } => new Finding(rule, message, condition.Declared) { Related = [.. related] },
            _ => throw new InvalidOperationException($"An action of the refit without an origin: {step}"),
        };

    /// <summary>The author's step that a strip action comes from; null where there is no action.</summary>
    public static Step? Step(PerformedAction? action) => StepOf(action?.Origin);

    /// <summary>The author's step that an action of this origin comes from in the strip; null for any other.</summary>
    public static Step? StepOf(ActionOrigin? origin) => origin switch
    {
        WrittenStep written => written.Step,
        ExpandedStep expanded => expanded.Step,
        InsertedCap inserted => inserted.Step,
        _ => null,
    };

    /// <summary>Where the author's rule stands that is the reason of an edge.</summary>
    public static SourceSpan Source(OrderReason reason) => ((Ruled)reason).Rule.Source;

    /// <summary>The links of a circle, each with its line and its reason.</summary>
    public static ImmutableArray<LabeledSpan> Chain(IEnumerable<CircleEdge> edges) => [.. edges.Select(Link)];

    private static LabeledSpan Link(CircleEdge edge)
    {
        var (earlier, later) = (ItemPhrases.Written(edge.Earlier), ItemPhrases.Written(edge.Later));
        return edge.Reason switch
        {
            Ruled ruled => new LabeledSpan(ruled.Rule.Source, $"{later} goes after {earlier}: a rule says so"),
            Enables { Need: var need } =>
                new LabeledSpan(Place(need.Declared, edge.Later), $"{later} goes after {earlier}: it needs {NeedPhrases.Wanted(need)}{Used(need)}"),
            Spoils { Need: var need } =>
                new LabeledSpan(Place(need.Declared, edge.Earlier), $"{later} goes after {earlier}, which needs {NeedPhrases.Wanted(need)}{Used(need)}"),
            SameThing { Variable.Kind: var kind } =>
                new LabeledSpan(Place(null, edge.Later), $"{later} goes after {earlier}: {Both(kind)}"),
            _ => new LabeledSpan(Place(null, edge.Later), $"{later} waits for {earlier}"),
        };
    }

    /// <summary>Of a choice the refit keeps to one way.</summary>
    private static string Used(Need need) =>
        need.Declared?.State == Model.Machines.NeededState.AnyOf ? ", the way that the strip has used" : "";

    private static string Both(StateKind kind) => kind == StateKind.Place ? "a part goes back the way it came" : "the strip did it the other way round";

    private static SourceSpan Place(Model.Machines.Condition? condition, RefitStep step) =>
        condition?.Declared ?? step.Action.Target?.Declared ?? Placed(step.Origin).Source;

    /// <summary>The rule that asks for a check or a test.</summary>
    private static PlacedRule Placed(ActionOrigin origin) => origin switch
    {
        RuledTest test => test.Rule,
        TestStep test => test.Rule,
        Retorqued retorqued => retorqued.Rule,
        _ => ((RuledCheck)origin).Rule,
    };
}
