using System.Globalization;
using ProcScript.Analysis.Auditing;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Reports.Documents;

/// <summary>Puts a report into its published forms.</summary>
/// <param name="report">The report.</param>
/// <param name="program">The program and its version.</param>
public sealed class DocumentBuilder(LibraryReport report, string program)
{
    private const int Version = 1;

    /// <summary>The whole report.</summary>
    /// <param name="files">How many files were asked about.</param>
    /// <param name="mostFindings">How many findings are listed at most; null for all.</param>
    /// <param name="elapsed">How long the check took; null where that is not to be said.</param>
    public ReportDocument Report(int files, int? mostFindings = null, TimeSpan? elapsed = null)
    {
        var counts = ReportCounts.Of(report);
        var listed = Math.Min(mostFindings ?? int.MaxValue, report.Findings.Length);
        return new ReportDocument(
            Version,
            program,
            [.. report.Findings.Take(listed).Select(Finding)],
            [.. report.Silenced.Select(Finding)],
            [.. report.Procedures.GroupBy(procedure => procedure.Procedure.Declared).Select(variants => Procedure(variants.Key, [.. variants]))],
            [.. NotChecked.Of(report).Select(left => new NotCheckedDocument(left.What, left.Why, left.Place is { } place ? Place(place) : null))],
            new SummaryDocument(
                files,
                counts.Errors,
                counts.Warnings,
                counts.Hints,
                counts.Allowed,
                counts.Known,
                report.Findings.Length - listed,
                counts.Procedures,
                counts.Proven,
                counts.NotChecked,
                counts.ByRule,
                elapsed is { } time ? Math.Round(time.TotalSeconds, 3) : null));
    }

    /// <summary>The <c>// proc: allow</c> comments.</summary>
    public SuppressionsDocument Suppressions() => new(Version, program, [.. report.Suppressions.Select(Suppression)]);

    /// <summary>What came of mistakes made on purpose in the library of the report.</summary>
    /// <param name="audit">What came of them.</param>
    public AuditDocument Audit(AuditReport audit) => AuditDocument.Of(audit, Place, program);

    private SuppressionDocument Suppression(ReportedSuppression suppression) => new(
        Place(new SourceSpan(suppression.Path, suppression.Comment.Span)),
        suppression.Rule?.Code ?? suppression.Comment.Rule,
        suppression.Rule?.Name ?? "",
        suppression.Comment.Reason ?? "",
        suppression.Comment.Expiry?.Day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        ReportWords.Of(suppression.State));

    private FindingDocument Finding(ReportedFinding reported)
    {
        var finding = reported.Finding;
        return new FindingDocument(
            finding.Rule.Code,
            finding.Rule.Name,
            SeverityWords.Of(reported.Severity),
            finding.Message,
            Place(finding.Primary),
            finding.Label,
            finding.Help,
            [.. finding.Related.Select(related => new RelatedDocument(Place(related.Place), related.Label))],
            [.. finding.Fixes.Select(Fix)],
            reported.Fingerprint.ToString(),
            reported.Silencing is { } silencing
                ? new SilencingDocument(ReportWords.Of(silencing.Kind), Place(silencing.Place), silencing.Reason)
                : null);
    }

    private FixDocument Fix(Fix fix) =>
        new(fix.Title, ReportWords.Of(fix.Grade), [.. fix.Edits.Select(edit => new EditDocument(Place(edit.Place), edit.NewText))]);

    private ProcedureDocument Procedure(SourceSpan declared, IReadOnlyCollection<ProcedureReport> variants) => new(
        variants.First().Procedure.Name,
        Place(declared),
        variants.Any(variant => variant.Procedure.HasErrors) ? "not-checked" : variants.All(variant => variant.IsProven) ? "proven" : "not-proven");

    private PlaceDocument Place(SourceSpan place)
    {
        var (start, end) = report.LinesOf(place);
        return new PlaceDocument(place.Path, start.Line + 1, start.Column + 1, end.Line + 1, end.Column + 1);
    }
}
