using System.Collections.Immutable;

namespace ProcScript.Analysis.Runs;

/// <summary>The derived refit of a procedure.</summary>
public sealed class RefitRun
{
    /// <summary>The actions in order: inverses, controls set for their sake, checks. Their numbers go on where the strip's end.</summary>
    public required ImmutableArray<PerformedAction> Actions { get; init; }

    /// <summary>What must go before what: any order that keeps this can be worked and keeps the author's rules.</summary>
    public required ImmutableArray<OrderEdge> Order { get; init; }
}
