using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

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
        InverseOf inverse => inverse.Action.Origin.Conditions,
        RuledCheck check => check.Rule.Conditions,
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
public sealed record ExpandedStep(Step Step, Need? For, NamedAction? Of) : ActionOrigin;

/// <summary>It undoes an action of the strip.</summary>
/// <param name="Action">The action.</param>
public sealed record InverseOf(PerformedAction Action) : ActionOrigin;

/// <summary>The refit sets a control for the sake of one of its actions, or sets it back after.</summary>
/// <param name="For">The need.</param>
/// <param name="Of">The action that has it.</param>
/// <param name="Undoes">The strip action whose inverse that is; null where a check has the need.</param>
public sealed record InsertedSet(Need For, NamedAction Of, PerformedAction? Undoes) : ActionOrigin;

/// <summary>A check that the refit rules ask for.</summary>
/// <param name="Rule">The rule.</param>
public sealed record RuledCheck(CheckRule Rule) : ActionOrigin;
