using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Auditing;

/// <summary>A mistake with what came of it.</summary>
/// <param name="Mistake">The mistake.</param>
/// <param name="Severity">How grave the gravest new finding is; null where there is none.</param>
/// <param name="Rule">The rule of that finding.</param>
/// <param name="IsUnexpected">Whether there is no finding, and something that the library expects of itself is otherwise.</param>
/// <param name="Packs">Where nothing notices: the procedures whose packs say something else with the mistake than without.</param>
public sealed record TriedMistake(Mistake Mistake, Severity? Severity, string? Rule, bool IsUnexpected, ImmutableArray<string> Packs)
{
    /// <summary>Why nothing notices it; null where something does.</summary>
    public Survival? Survival { get; init; }

    /// <summary>Whether anything notices it.</summary>
    public bool IsNoticed => Severity is not null || IsUnexpected;
}
