using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Runs;

/// <summary>Where an action comes from.</summary>
public abstract record ActionOrigin
{
    private protected ActionOrigin()
    {
    }

    /// <summary>The conditions that the author wrote at the action itself; they bind its inverse too.</summary>
    internal ImmutableArray<Condition> Conditions => this switch
    {
        WrittenStep written => written.Step.Conditions,
        InverseOf { Action: { Verb: Verb.Remove, Changes.Length: > 1 } removal } =>
        [
            // A part that was propped when it came out goes back onto its prop.
            .. removal.Origin.Conditions,
            new Condition(removal.Target!, NeededState.Supported, -1, NeedsPhase.Refit, removal.Target!.Declared),
        ],
        InverseOf inverse => inverse.Action.Origin.Conditions,
        Tightened tightened => tightened.Undo.Origin.Conditions,
        PropAgain again => again.Support.Origin.Conditions,
        Retorqued retorqued => retorqued.Rule.Conditions,
        RuledCheck check => check.Rule.Conditions,
        TestStep { Step: { } step } => step.Conditions,
        _ => [],
    };
}

/// <summary>The author wrote the step.</summary>
/// <param name="Step">The step.</param>
public sealed record WrittenStep(Step Step) : ActionOrigin;

/// <summary>A <c>strip x</c> takes it.</summary>
/// <param name="Step">The <c>strip</c> step.</param>
/// <param name="For">What the action is for: the need it meets; null for the removal of x itself.</param>
/// <param name="Of">The verb and the target of the action that has the need; null with <paramref name="For"/>.</param>
public sealed record ExpandedStep(Step Step, Need? For, NamedAction? Of) : ActionOrigin
{
    /// <summary>What the procedures in sight say of the same action.</summary>
    public ActionDetails Given { get; init; } = ActionDetails.None;
}

/// <summary>What a step has just opened is capped.</summary>
/// <param name="Step">The step.</param>
public sealed record InsertedCap(Step Step) : ActionOrigin;

/// <summary>It undoes an action of the strip.</summary>
/// <param name="Action">The action.</param>
public sealed record InverseOf(PerformedAction Action) : ActionOrigin
{
    private ActionDetails? _details;

    /// <summary>What the author's block says of it: worked out once, for every rule asks.</summary>
    internal ActionDetails Details => _details ??= RefitDetails.Of(StepOrigin.Details(Action));

    /// <summary>Whether both undo the same.</summary>
    public bool Equals(InverseOf? other) => other is not null && Action == other.Action;

    /// <inheritdoc/>
    public override int GetHashCode() => Action.GetHashCode();
}

/// <summary>The refit sets a control for the sake of one of its actions, or sets it back after.</summary>
/// <param name="For">The need.</param>
/// <param name="Of">The action that has it.</param>
/// <param name="Undoes">The strip action whose inverse that is; null where a check has the need.</param>
public sealed record InsertedSet(Need For, NamedAction Of, PerformedAction? Undoes) : ActionOrigin;

/// <summary>A part that was propped when it came out is propped again before it goes in.</summary>
/// <param name="Support">The action of the strip that propped it.</param>
/// <param name="Removal">The action of the strip that took it out, and so away from its prop.</param>
public sealed record PropAgain(PerformedAction Support, PerformedAction Removal) : ActionOrigin;

/// <summary>What a rule has go in finger-tight gets its torque.</summary>
/// <param name="Undo">The first action of the strip that took pieces of it off.</param>
/// <param name="Rule">The rule.</param>
public sealed record Tightened(PerformedAction Undo, SnugRule Rule) : ActionOrigin;

/// <summary>The torque once more, since a rule asks for it.</summary>
/// <param name="Rule">The rule.</param>
public sealed record Retorqued(RetorqueRule Rule) : ActionOrigin;

/// <summary>A test that the refit rules ask for, as one action: while the order is sought nothing may come into it.</summary>
/// <param name="Rule">The rule.</param>
public sealed record RuledTest(TestRule Rule) : ActionOrigin;

/// <summary>An action of a test.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Step">The step that the author wrote; null where an energy comes back for the test or is isolated after it.</param>
public sealed record TestStep(TestRule Rule, Step? Step) : ActionOrigin;

/// <summary>A check, a record or a pause that the refit rules ask for.</summary>
/// <param name="Rule">The rule.</param>
public sealed record RuledCheck(CheckRule Rule) : ActionOrigin;
