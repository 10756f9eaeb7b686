using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;

namespace ProcScript.Analysis.Order;

/// <summary>What an action at its place in a sequence has to do with the others.</summary>
/// <param name="Needs">What has to be true for it.</param>
/// <param name="Changes">What it changes; nothing where it changes nothing.</param>
internal record CausalStep(ImmutableArray<Need> Needs, ImmutableArray<StateChange> Changes);

/// <summary>An action at its place in a sequence, before it has a number.</summary>
/// <param name="Request">The action.</param>
/// <param name="Origin">Where it comes from.</param>
/// <param name="Needs">What has to be true for it.</param>
/// <param name="Changes">What it changes; nothing where it changes nothing.</param>
internal sealed record ActionDraft(ActionRequest Request, ActionOrigin Origin, ImmutableArray<Need> Needs, ImmutableArray<StateChange> Changes)
    : CausalStep(Needs, Changes)
{
    /// <summary>Whether other work goes on meanwhile.</summary>
    public bool InBackground { get; init; }
}
