using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>What the author's text says of an action, told from where the action comes from.</summary>
internal static class StepOrigin
{
    /// <summary>The block that holds for it.</summary>
    public static ActionDetails Details(PerformedAction action) => action.Verb == Verb.Snug
        // What is right once it is tight is said there.
        ? Details(action.Origin) with { Torque = null, TorqueDeclared = null, Pattern = null, Checks = [], Signed = false }
        : Details(action.Origin);

    /// <summary>The block that holds for an action of this origin.</summary>
    public static ActionDetails Details(ActionOrigin origin) => origin switch
    {
        WrittenStep written => written.Step.Details,
        // What stands at `strip x` is about taking x out, the last of the actions that it expands to.
        ExpandedStep { For: null } expanded => expanded.Step.Details.Or(expanded.Given),
        ExpandedStep expanded => expanded.Given,
        InverseOf inverse => inverse.Details,
        Tightened tightened => RefitDetails.Of(Details(tightened.Undo)) with { How = [], Photos = [], Figures = [], Uses = [], Time = null, Store = null },
        PropAgain again => Details(again.Support) with { Alerts = [], Photos = [], Figures = [], Refit = null },
        TestStep { Step: { } step } => step.Details,
        RuledCheck check => check.Rule.Details,
        _ => ActionDetails.None,
    };

    /// <summary>The step that an author wrote for it or for what it undoes; null for what the compiler put into the refit, and for its checks.</summary>
    public static Step? Step(ActionOrigin origin) => origin switch
    {
        WrittenStep written => written.Step,
        ExpandedStep expanded => expanded.Step,
        InverseOf inverse => Step(inverse.Action.Origin),
        Tightened tightened => Step(tightened.Undo.Origin),
        PropAgain again => Step(again.Support.Origin),
        TestStep test => test.Step,
        _ => null,
    };

    /// <summary>The action in the text whose block holds for it; null where no single block does.</summary>
    public static StepBlock? Block(ActionOrigin origin) => origin switch
    {
        WrittenStep written => new StepBlock(written.Step.Source, OfRefit: false),
        ExpandedStep { For: null } expanded => new StepBlock(expanded.Step.Source, OfRefit: false),
        TestStep { Step: { } step } => new StepBlock(step.Source, OfRefit: false),
        RuledCheck check => new StepBlock(check.Rule.Source, OfRefit: false),
        InverseOf inverse when Block(inverse.Action.Origin) is { OfRefit: false } block => block with { OfRefit = true },
        _ => null,
    };

    /// <summary>The alerts that an author wrote for it: for itself, and for what it undoes, which hold for it as well.</summary>
    public static (ImmutableArray<Alert> Own, ImmutableArray<Alert> Mirrored) Alerts(ActionOrigin origin) => (origin, Step(origin)) switch
    {
        (RuledCheck check, _) => (check.Rule.Alerts, []),
        (Retorqued retorqued, _) => (retorqued.Rule.Alerts, []),
        (_, { Alerts.IsEmpty: true, Details: { Alerts.IsEmpty: true, Refit: null or { Alerts.IsEmpty: true } } }) => ([], []),
        (InverseOf or PropAgain or Tightened, { } step) =>
        (
            [.. Written(step).Where(alert => alert.Phase == NeedsPhase.Refit), .. step.Details.Refit?.Alerts ?? []],
            [.. Written(step).Where(alert => alert.Phase == NeedsPhase.Both)]),
        (TestStep, { } step) => ([.. Written(step)], []),
        (_, { } step) => ([.. Written(step).Where(alert => alert.IsOfStrip)], []),
        _ => ([], []),
    };

    /// <summary>The alerts that stand at the same action elsewhere, where a <c>strip</c> puts it in.</summary>
    public static (ImmutableArray<Alert> Own, ImmutableArray<Alert> Mirrored) GivenAlerts(ActionOrigin origin) => origin switch
    {
        ExpandedStep expanded => ([.. Others(expanded, expanded.Given.Alerts).Where(alert => alert.IsOfStrip)], []),
        InverseOf { Action.Origin: ExpandedStep expanded } =>
        (
            [.. Others(expanded, expanded.Given.Alerts).Where(alert => alert.Phase == NeedsPhase.Refit), .. Others(expanded, expanded.Given.Refit?.Alerts ?? [])],
            [.. Others(expanded, expanded.Given.Alerts).Where(alert => alert.Phase == NeedsPhase.Both)]),
        _ => ([], []),
    };

    /// <summary>The alerts that the <c>strip</c> does not say itself, before the first of what it puts in.</summary>
    private static IEnumerable<Alert> Others(ExpandedStep expanded, IEnumerable<Alert> alerts)
    {
        var own = Written(expanded.Step).Concat(expanded.Step.Details.Refit?.Alerts ?? []).Select(alert => alert.Text).ToHashSet();
        return alerts.Where(alert => !own.Contains(alert.Text));
    }

    private static IEnumerable<Alert> Written(Step step) => step.Alerts.Concat(step.Details.Alerts);

    /// <summary>Where it is written.</summary>
    public static SourceSpan Source(PerformedAction action) => action.Origin switch
    {
        WrittenStep written => written.Step.Source,
        ExpandedStep expanded => expanded.Step.Source,
        InsertedCap inserted => inserted.Step.Source,
        InverseOf inverse => Source(inverse.Action),
        RuledCheck check => check.Rule.Source,
        Tightened tightened => tightened.Rule.Source,
        Retorqued retorqued => retorqued.Rule.Source,
        PropAgain again => Source(again.Support),
        TestStep test => test.Step?.Source ?? test.Rule.Source,
        InsertedSet { Undoes: { } undone } => Source(undone),
        InsertedSet inserted => inserted.For.Declared?.Declared ?? inserted.For.Item.Declared,
        _ => throw new InvalidOperationException($"An action of unknown origin: {action.Origin}"),
    };

    /// <summary>Why the compiler put it in; empty for what an author wrote, or its inverse.</summary>
    public static string Because(PerformedAction action, Wordbook book) => action.Origin switch
    {
        PropAgain => book.Say("because.bears"),
        TestStep { Step: null, Rule.Title: var title } when action.Verb == Verb.Restore => book.Say("because.test", ("test", title)),
        TestStep { Step: null, Rule.Title: var title } => book.Say("because.test-over", ("test", title)),
        InsertedCap => book.Say("because.capped"),
        ExpandedStep { Of: { } of } => book.Say("because.to", ("step", StepText.Within(of, book))),
        InsertedSet inserted when inserted.For.IsMetBy(action.PositionAfter) => book.Say("because.to", ("step", StepText.Within(inserted.Of, book))),
        InsertedSet inserted => book.Say("because.back-again", ("step", StepText.Within(inserted.Of, book))),
        _ => "",
    };
}
