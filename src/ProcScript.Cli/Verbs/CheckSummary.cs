using System.Globalization;
using ProcScript.Analysis.Reports;
using ProcScript.Cli.Reports;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary>The last line of a check: what was found, what is silenced, what is proven, and what was not checked.</summary>
internal static class CheckSummary
{
    /// <summary>The line for a check.</summary>
    public static string Of(CheckOutcome outcome) => Checked(outcome) + Left(outcome) + Time(outcome);

    /// <summary>What was left where only changes were checked.</summary>
    private static string Left(CheckOutcome outcome) =>
        outcome.Report.LeftCount is { } left ? $"; {Counted.Of(left, "procedure")} left, which no change has touched" : "";

    private static string Time(CheckOutcome outcome) =>
        outcome.Time is { } taken ? string.Create(CultureInfo.InvariantCulture, $"; {taken.Elapsed.TotalSeconds:0.00} s") : "";

    private static string Checked(CheckOutcome outcome)
    {
        // A procedure is what the author wrote once: proven when each choice of arguments is, in each variant.
        var counts = outcome.Counts;
        var files = Counted.Of(outcome.FileCount, "file");
        var silenced = Silenced(counts);
        if (counts.Findings == 0 && counts.Proven == counts.Procedures)
        {
            var good = counts.Proven == 0 ? $"checked {files}: no findings" : $"checked {Counted.Of(counts.Proven, "procedure")} in {files}: all proven";
            return good + silenced;
        }

        var weights = string.Join(", ", new[] { (Severity.Error, counts.Errors), (Severity.Warning, counts.Warnings), (Severity.Hint, counts.Hints) }
            .Where(weight => weight.Item2 > 0)
            .Select(weight => Counted.Of(weight.Item2, SeverityWords.Of(weight.Item1))));
        // Without a finding something is not proven here: an error is silenced, and silence is no good news.
        return $"{(weights.Length == 0 ? "not all proven" : weights)} in {files}{silenced}{Proven(counts)}";
    }

    private static string Silenced(ReportCounts counts) =>
        (counts.Allowed == 0 ? "" : $"; {counts.Allowed} allowed by comments") + (counts.Known == 0 ? "" : $"; {counts.Known} known in the baseline");

    private static string Proven(ReportCounts counts)
    {
        if (counts.Procedures == 0)
        {
            return "";
        }

        var share = counts.Proven == counts.Procedures
            ? Counted.Of(counts.Procedures, "procedure")
            : $"{counts.Proven} of {Counted.Of(counts.Procedures, "procedure")}";
        return counts.NotChecked == 0 ? $"; {share} proven" : $"; {share} proven, {counts.NotChecked} not checked for errors in the text";
    }
}
