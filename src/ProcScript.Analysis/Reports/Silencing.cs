using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Reports;

/// <summary>Why a finding is not held against the library.</summary>
/// <param name="Kind">By what.</param>
/// <param name="Place">The comment, or the entry in the baseline.</param>
/// <param name="Reason">The reason that the comment gives; empty where none is given.</param>
public sealed record Silencing(SilencingKind Kind, SourceSpan Place, string Reason);

/// <summary>What silences findings.</summary>
public enum SilencingKind
{
    /// <summary>A <c>// proc: allow</c> comment.</summary>
    Comment,

    /// <summary>The baseline knows it.</summary>
    Baseline,
}
