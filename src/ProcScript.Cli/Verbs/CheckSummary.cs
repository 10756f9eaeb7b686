using ProcScript.Cli.Output;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary>The last line of a check: what was found, what is proven, and what was not checked.</summary>
internal static class CheckSummary
{
    /// <summary>The line for a library.</summary>
    public static string Of(CheckedLibrary library) => Checked(library) + Left(library);

    /// <summary>What was left where only changes were checked.</summary>
    private static string Left(CheckedLibrary library) =>
        library.Report.Scope is { FileCount: not null } ? $"; {Counted.Of(library.LeftCount, "procedure")} left, which no change has touched" : "";

    private static string Checked(CheckedLibrary library)
    {
        // A procedure is what the author wrote once: proven when each choice of arguments is, in each variant.
        var procedures = library.Procedures.GroupBy(report => report.Procedure.Declared).ToList();
        var proven = procedures.Count(variants => variants.All(report => report.IsProven));
        var notChecked = procedures.Count(variants => variants.Any(report => report.Procedure.HasErrors));
        var files = Counted.Of(library.FileCount, "file");
        if (library.Findings.IsEmpty && proven == procedures.Count)
        {
            return proven == 0 ? $"checked {files}: no findings" : $"checked {Counted.Of(proven, "procedure")} in {files}: all proven";
        }

        var weights = string.Join(", ", new[] { Severity.Error, Severity.Warning, Severity.Hint }
            .Select(severity => (severity, Count: library.Findings.Count(reported => reported.Severity == severity)))
            .Where(weight => weight.Count > 0)
            .Select(weight => Counted.Of(weight.Count, SeverityWords.Of(weight.severity))));
        return $"{(weights.Length == 0 ? "no findings" : weights)} in {files}{Proven(procedures.Count, proven, notChecked)}";
    }

    private static string Proven(int all, int proven, int notChecked)
    {
        if (all == 0)
        {
            return "";
        }

        var share = proven == all ? Counted.Of(all, "procedure") : $"{proven} of {Counted.Of(all, "procedure")}";
        return notChecked == 0 ? $"; {share} proven" : $"; {share} proven, {notChecked} not checked for errors in the text";
    }
}
