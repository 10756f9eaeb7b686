using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Auditing;

/// <summary>What came of all the mistakes that were made on purpose.</summary>
/// <param name="Tried">The mistakes, in the order of files and text.</param>
public sealed record AuditReport(ImmutableArray<TriedMistake> Tried)
{
    /// <summary>The mistakes that nothing notices.</summary>
    public IEnumerable<TriedMistake> Unnoticed => Tried.Where(tried => !tried.IsNoticed);

    /// <summary>How many are noticed at this severity.</summary>
    public int Count(Severity severity) => Tried.Count(tried => tried.Severity == severity);

    /// <summary>How many only the expectations of the library notice.</summary>
    public int Unexpected => Tried.Count(tried => tried.IsUnexpected);
}
