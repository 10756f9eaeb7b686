using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Necessity;

/// <summary>One procedure of the text in every variant with all arguments, and what else its lines are a part of.</summary>
/// <param name="Own">What came of it, in the order of the library.</param>
/// <param name="Callers">What came of the proven procedures that bring its steps in with <c>do</c>.</param>
internal sealed record ProcedureFamily(ImmutableArray<FamilyMember> Own, ImmutableArray<FamilyMember> Callers)
{
    /// <summary>Its own variants, then its callers.</summary>
    public ImmutableArray<FamilyMember> All { get; } = [.. Own, .. Callers];

    /// <summary>The energies that it isolates for nothing; worked out once somebody asks.</summary>
    public ImmutableArray<IdleIsolation> IdleIsolations => field.IsDefault ? field = IdleIsolation.Of(this) : field;
}

/// <summary>What came of a procedure in one variant.</summary>
internal sealed record FamilyMember
{
    /// <summary>What came of it.</summary>
    public required ProcedureOutcome Outcome { get; init; }

    /// <summary>The machine in that variant.</summary>
    public required MachineFacts Facts { get; init; }
}
