using System.Globalization;
using System.Text;
using ProcScript.Analysis;
using ProcScript.Cli.Output;
using ProcScript.Cli.Verbs;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Reports;

/// <summary>Workflow commands that a GitHub runner turns into annotations of the sources, and a last line for the log.</summary>
internal static class GitHubAnnotations
{
    /// <summary>A command a finding, and the summary.</summary>
    public static string Render(CheckOutcome outcome)
    {
        StringBuilder text = new();
        foreach (var reported in outcome.Listed)
        {
            Append(text, reported, outcome);
        }

        return text.Append(CheckSummary.Of(outcome)).Append('\n').ToString();
    }

    private static void Append(StringBuilder text, ReportedFinding reported, CheckOutcome outcome)
    {
        var finding = reported.Finding;
        var (start, end) = outcome.Report.LinesOf(finding.Primary);
        text.Append(CultureInfo.InvariantCulture, $"::{Command(reported.Severity)} title={Property($"{finding.Rule.Code} {finding.Rule.Name}")},file={Property(outcome.Paths.Of(finding.Primary.Path))}");
        text.Append(CultureInfo.InvariantCulture, $",line={start.Line + 1},endLine={end.Line + 1}");
        if (start.Line == end.Line)
        {
            // The runner refuses columns where the lines differ.
            text.Append(CultureInfo.InvariantCulture, $",col={start.Column + 1},endColumn={end.Column + 1}");
        }

        text.Append(CultureInfo.InvariantCulture, $"::{Data(FindingText.Of(finding))}\n");
    }

    private static string Command(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "notice",
    };

    /// <summary>A log is read at a terminal too: what a terminal would obey is shown.</summary>
    private static string Data(string text) =>
        string.Join("%0A", text.Split('\n').Select(line => LogCommands.Disarm(PrintableText.Of(line)).Replace("%", "%25", StringComparison.Ordinal)));

    private static string Property(string text) => LogCommands.Disarm(PrintableText.Of(text))
        .Replace("%", "%25", StringComparison.Ordinal)
        .Replace(":", "%3A", StringComparison.Ordinal)
        .Replace(",", "%2C", StringComparison.Ordinal);
}
