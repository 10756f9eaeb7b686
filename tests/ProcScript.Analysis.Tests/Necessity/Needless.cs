using System.Text;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Tests.Necessity;

/// <summary>What is told not to be needed in a text, and the text without it.</summary>
internal static class Needless
{
    private const string Code = "PRC5081";

    public static IReadOnlyList<Finding> In(LibraryReport report) =>
        [.. report.Findings.Select(reported => reported.Finding).Where(finding => finding.Rule.Code == Code)];

    /// <summary>The steps that a finding names, as they are written.</summary>
    public static IEnumerable<string> Steps(Checked source, Finding finding) =>
        finding.Related.Where(place => place.Label != "the goal").Select(place => place.Place).Prepend(finding.Primary).Select(place => source.At(place).Split(": ")[1]);

    /// <summary>A text after the edits of some findings.</summary>
    public static string Mended(string text, IEnumerable<Finding> findings)
    {
        var mended = new StringBuilder(text);
        foreach (var edit in findings.SelectMany(finding => Assert.Single(finding.Fixes).Edits).OrderByDescending(edit => edit.Place.Span.Start))
        {
            mended.Remove(edit.Place.Span.Start, edit.Place.Span.Length).Insert(edit.Place.Span.Start, edit.NewText);
        }

        return mended.ToString();
    }

    /// <summary>Whether all is proven, the goal among it, and nothing is said but that steps are not needed.</summary>
    public static bool IsStillRight(LibraryReport report) =>
        report.Procedures.All(procedure => procedure.IsProven) && report.Findings.All(found => found.Severity == Severity.Hint);
}
