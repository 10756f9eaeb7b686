using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Findings;

namespace ProcScript.LanguageServer.Checking;

/// <summary>Writes findings as diagnostics.</summary>
/// <param name="pages">Where rules are explained.</param>
/// <param name="client">What the client shows of them.</param>
internal sealed class DiagnosticWriter(RulePageFiles pages, ClientProfile client)
{
    private const int Unnecessary = 1;

    private static readonly ImmutableHashSet<string> AboutTooMuch = ["nothing-to-allow", "done-twice"];

    /// <summary>
    /// The diagnostics of every file that has some, by path: what <c>check</c> prints for the folders that are open. Of a file that is
    /// only used, errors alone.
    /// </summary>
    public ImmutableSortedDictionary<string, ImmutableArray<Diagnostic>> Write(LibraryAnalysis analysis) =>
        Told(analysis).ToImmutableSortedDictionary(file => file.Path, file => Write(file.Findings, analysis), StringComparer.Ordinal);

    /// <summary>The findings of each file that are told, in the order of the files; those that have none are left out.</summary>
    public static IEnumerable<(string Path, ImmutableArray<ReportedFinding> Findings)> Told(LibraryAnalysis analysis)
    {
        var findings = analysis.Report.Findings;
        for (var (start, end) = (0, 0); start < findings.Length; start = end)
        {
            // They come in the order of the files.
            var path = findings[start].Finding.Primary.Path;
            for (end = start; end < findings.Length && findings[end].Finding.Primary.Path == path;)
            {
                end++;
            }

            var all = findings[start..end];
            ImmutableArray<ReportedFinding> told = analysis.Files.Listed.Contains(path) || analysis.Report.OtherTexts.ContainsKey(path)
                ? all
                : [.. all.Where(one => one.Severity == Severity.Error)];
            if (!told.IsEmpty)
            {
                yield return (path, told);
            }
        }
    }

    /// <summary>Findings as diagnostics.</summary>
    public ImmutableArray<Diagnostic> Write(ImmutableArray<ReportedFinding> findings, LibraryAnalysis analysis) => [.. findings.Select(one => Write(one, analysis))];

    /// <summary>One finding.</summary>
    public Diagnostic Write(ReportedFinding reported, LibraryAnalysis analysis)
    {
        var finding = reported.Finding;
        var rule = finding.Rule;
        return new Diagnostic(analysis.LocationOf(finding.Primary).Range, SeverityOf(reported.Severity), rule.Code, "procscript", Message(finding))
        {
            CodeDescription = client.TakesCodeDescriptions && pages.UriOf(rule) is { } page ? new CodeDescription(page) : null,
            Tags = AboutTooMuch.Contains(rule.Name) ? [Unnecessary] : null,
            RelatedInformation = finding.Related.IsEmpty
                ? null
                : [.. finding.Related.Select(related => new DiagnosticRelatedInformation(analysis.LocationOf(related.Place), related.Label))],
            Data = new DiagnosticData(rule.Name),
        };
    }

    /// <summary>The headline, what is to be seen at the place, and the cure, a line each.</summary>
    private static string Message(Finding finding)
    {
        var message = finding.Message;
        message += finding.Label.Length > 0 ? "\n" + finding.Label : "";
        return message + (finding.Help.Length > 0 ? "\nHelp: " + finding.Help : "");
    }

    /// <summary>A hint is told as information: clients keep the protocol's own hints out of their lists.</summary>
    private static int SeverityOf(Severity severity) => severity switch
    {
        Severity.Error => 1,
        Severity.Warning => 2,
        _ => 3,
    };
}
