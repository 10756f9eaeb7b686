using System.Globalization;
using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Fuzz.Inputs;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Fuzz;

/// <summary>A library with its check.</summary>
/// <param name="Store">Its files.</param>
/// <param name="Settings">What its settings say.</param>
/// <param name="Report">What the check came to.</param>
internal sealed record CheckedInput(MemorySourceStore Store, CheckSettings Settings, LibraryReport Report)
{
    /// <summary>How many errors there are.</summary>
    public int Errors => Report.Findings.Count(finding => finding.Severity == Severity.Error);

    /// <summary>Checks a library by nothing but its texts.</summary>
    public static CheckedInput Of(SeedLibrary library, CancellationToken cancellation)
    {
        var store = new MemorySourceStore(library.Files);
        var settings = SettingsReader.Read(store);
        return new CheckedInput(store, settings, LibraryCheck.Run(store, settings, cancellation));
    }

    /// <summary>What the report says, without places: these differ from one layout to another.</summary>
    public static string Words(LibraryReport report) => string.Join(
        '\n',
        report.Findings.Select(one => $"{one.Severity} {one.Finding.Rule.Code} {one.Finding.Message}").Order(StringComparer.Ordinal)
            .Concat(report.Procedures.Select(one => $"{one.Procedure.Job} {one.IsProven}")));

    /// <summary>What the report says, with lines and columns.</summary>
    public static string WordsAndPlaces(LibraryReport report) => string.Join(
        '\n',
        report.Findings.Select(one => string.Create(
                CultureInfo.InvariantCulture,
                $"{one.Severity} {one.Finding.Rule.Code} {one.Finding.Primary.Path}:{report.LinesOf(one.Finding.Primary)} {one.Finding.Message} / {one.Finding.Label} / {one.Finding.Help} / {string.Join(' ', one.Finding.Fixes.Select(fix => fix.Title))}"))
            .Concat(report.Procedures.Select(one => $"{one.Procedure.Job} {one.IsProven}")));

    /// <summary>The lines of the second text that the first does not have.</summary>
    public static string Added(string one, string other) => string.Join(" | ", other.Split('\n').Except(one.Split('\n')));

    /// <summary>Where two texts of lines differ for the first time.</summary>
    public static string FirstDifference(string one, string other)
    {
        var (lines, others) = (one.Split('\n'), other.Split('\n'));
        var at = 0;
        while (at < lines.Length && at < others.Length && lines[at] == others[at])
        {
            at++;
        }

        return $"'{lines.ElementAtOrDefault(at)}' against '{others.ElementAtOrDefault(at)}'";
    }
}
