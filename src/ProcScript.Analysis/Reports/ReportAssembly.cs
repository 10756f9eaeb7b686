using System.Collections.Immutable;
using ProcScript.Analysis.Checking;
using ProcScript.Model;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Reports;

/// <summary>Makes the report of what a check found: what is silenced, how much each finding weighs, what it is known by.</summary>
internal static class ReportAssembly
{
    /// <summary>The report.</summary>
    /// <param name="library">The library.</param>
    /// <param name="settings">What was chosen about the check.</param>
    /// <param name="findings">All that was found, in any order.</param>
    /// <param name="procedures">What came of the procedures.</param>
    public static LibraryReport Report(
        Library library, CheckSettings settings, IReadOnlyCollection<Finding> findings, ImmutableArray<ProcedureReport> procedures)
    {
        var (all, silencings, suppressions) = Checking.Suppressions.Apply(library, settings, [.. findings.Where(finding => SeverityOf(finding) is not null)]);
        var texts = settings.Files.ToImmutableSortedDictionary(file => file.Path, file => file, StringComparer.Ordinal);
        var fingerprints = new Fingerprints(path => library.Trees.GetValueOrDefault(path)?.Text ?? texts.GetValueOrDefault(path));
        var reported = new List<ReportedFinding>();
        foreach (var finding in FindingMerge.Sort(all))
        {
            if (SeverityOf(finding) is { } severity)
            {
                reported.Add(new ReportedFinding(finding, severity)
                {
                    Fingerprint = fingerprints.Next(finding),
                    Silencing = silencings.GetValueOrDefault(finding),
                });
            }
        }

        return new LibraryReport
        {
            Library = library,
            Settings = settings,
            Findings = [.. reported.Where(one => one.Silencing is null)],
            Silenced = [.. reported.Where(one => one.Silencing is not null)],
            Suppressions = suppressions,
            Procedures = procedures,
            OtherTexts = texts,
        };

        // A rule that is off says nothing, and leaves nothing for a comment to silence.
        Severity? SeverityOf(Finding finding) => settings.For(finding.Primary.Path).SeverityOf(finding.Rule);
    }
}
