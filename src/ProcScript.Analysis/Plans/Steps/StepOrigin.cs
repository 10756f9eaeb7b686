using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>What the author's text says of an action, told from where the action comes from.</summary>
internal static class StepOrigin
{
    /// <summary>The block that holds for it.</summary>
    public static ActionDetails Details(PerformedAction action) => Details(action.Origin);

    /// <summary>The block that holds for an action of this origin.</summary>
    public static ActionDetails Details(ActionOrigin origin) => origin switch
    {
        WrittenStep written => written.Step.Details,
        // What stands at `strip x` is about taking x out, the last of the actions that it expands to.
        ExpandedStep { For: null } expanded => expanded.Step.Details with { Alerts = [] },
        InverseOf inverse => RefitDetails.Of(Details(inverse.Action)),
        PropAgain again => Details(again.Support) with { Alerts = [], Photos = [], Refit = null },
        TestStep { Step: { } step } => step.Details,
        _ => ActionDetails.None,
    };

    /// <summary>
    /// The alerts that stand before it. Those of a <c>strip</c> stand before the first action that it expands to, for they must not come
    /// after what they warn of.
    /// </summary>
    public static ImmutableArray<Alert> Alerts(PerformedAction action, PerformedAction? before) => action.Origin switch
    {
        WrittenStep written => written.Step.Alerts,
        ExpandedStep expanded when (before?.Origin as ExpandedStep)?.Step != expanded.Step =>
            [.. expanded.Step.Alerts, .. expanded.Step.Details.Alerts],
        RuledCheck check => check.Rule.Alerts,
        TestStep { Step: { } step } => step.Alerts,
        // What stands before the whole test stands before its first action.
        TestStep test when (before?.Origin as TestStep)?.Rule != test.Rule => test.Rule.Alerts,
        _ => [],
    };

    /// <summary>Where it is written.</summary>
    public static SourceSpan Source(PerformedAction action) => action.Origin switch
    {
        WrittenStep written => written.Step.Source,
        ExpandedStep expanded => expanded.Step.Source,
        InverseOf inverse => Source(inverse.Action),
        RuledCheck check => check.Rule.Source,
        PropAgain again => Source(again.Support),
        TestStep test => test.Step?.Source ?? test.Rule.Source,
        InsertedSet { Undoes: { } undone } => Source(undone),
        InsertedSet inserted => inserted.For.Declared?.Declared ?? inserted.For.Item.Declared,
        _ => throw new InvalidOperationException($"An action of unknown origin: {action.Origin}"),
    };

    /// <summary>Why the compiler put it in; empty for what an author wrote, or its inverse.</summary>
    public static string Because(PerformedAction action) => action.Origin switch
    {
        PropAgain => "so that it bears the part as it goes in",
        TestStep { Step: null, Rule.Title: var title } when action.Verb == Verb.Restore => $"for the test *{title}* alone",
        TestStep { Step: null, Rule.Title: var title } => $"for the test *{title}* is over",
        ExpandedStep { Of: { } of } => $"to {StepText.Within(of)}",
        InsertedSet inserted when inserted.For.IsMetBy(action.PositionAfter) => $"to {StepText.Within(inserted.Of)}",
        InsertedSet inserted => $"back again, for it was moved only to {StepText.Within(inserted.Of)}",
        _ => "",
    };
}
