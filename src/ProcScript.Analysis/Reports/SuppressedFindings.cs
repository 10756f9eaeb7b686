using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Reports;

/// <summary>All findings of a check, and what the <c>// proc: allow</c> comments have to do with them.</summary>
/// <param name="Findings">The findings, those about the comments among them.</param>
/// <param name="Silencings">Which of them are silenced, and by what.</param>
/// <param name="Suppressions">The comments in the order of files and text.</param>
internal sealed record SuppressedFindings(
    IReadOnlyCollection<Finding> Findings,
    IReadOnlyDictionary<Finding, Silencing> Silencings,
    ImmutableArray<ReportedSuppression> Suppressions);
