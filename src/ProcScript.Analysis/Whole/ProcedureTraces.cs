using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Whole;

/// <summary>What the runs of a procedure leave behind for the rules about libraries, which need not keep the runs for it.</summary>
/// <param name="Procedure">The procedure.</param>
/// <param name="IsProven">Whether it is proven.</param>
/// <param name="Met">The names of the items that its strip acts on, each once; empty where it is not proven.</param>
/// <param name="Tightened">The joints without a torque of their own that it tightens.</param>
internal sealed record ProcedureTraces(Procedure Procedure, bool IsProven, ImmutableArray<string> Met, ImmutableArray<TightenedJoint> Tightened)
{
    /// <summary>Reads them off an outcome.</summary>
    public static ProcedureTraces Of(ProcedureOutcome outcome) => new(
        outcome.Procedure,
        outcome.IsProven,
        outcome is { IsProven: true, Strip: { } strip } ? [.. strip.Actions.Select(action => action.Target?.Name).OfType<string>().Distinct(StringComparer.Ordinal)] : [],
        [.. TightenedJoint.Of(outcome)]);
}
