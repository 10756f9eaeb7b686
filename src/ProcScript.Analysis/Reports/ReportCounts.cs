using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Reports;

/// <summary>What a report comes to in numbers.</summary>
public sealed record ReportCounts
{
    /// <summary>How many findings are errors.</summary>
    public required int Errors { get; init; }

    /// <summary>How many findings are warnings.</summary>
    public required int Warnings { get; init; }

    /// <summary>How many findings are hints.</summary>
    public required int Hints { get; init; }

    /// <summary>How many findings a comment allows.</summary>
    public required int Allowed { get; init; }

    /// <summary>How many findings the baseline knows.</summary>
    public required int Known { get; init; }

    /// <summary>How many procedures there are; each counts once, whatever its variants and arguments.</summary>
    public required int Procedures { get; init; }

    /// <summary>How many of them are proven, in every variant and with all arguments that are tried.</summary>
    public required int Proven { get; init; }

    /// <summary>How many of them were not run, for errors in their text or their machine.</summary>
    public required int NotChecked { get; init; }

    /// <summary>The rules that have findings, the most frequent first.</summary>
    public required ImmutableArray<RuleCount> ByRule { get; init; }

    /// <summary>How many findings there are.</summary>
    public int Findings => Errors + Warnings + Hints;

    /// <summary>Counts.</summary>
    public static ReportCounts Of(LibraryReport report)
    {
        var procedures = report.Procedures.GroupBy(procedure => procedure.Procedure.Declared).ToList();
        return new ReportCounts
        {
            Errors = Count(Severity.Error),
            Warnings = Count(Severity.Warning),
            Hints = Count(Severity.Hint),
            Allowed = report.Silenced.Count(reported => reported.Silencing!.Kind == SilencingKind.Comment),
            Known = report.Silenced.Count(reported => reported.Silencing!.Kind == SilencingKind.Baseline),
            Procedures = procedures.Count,
            Proven = procedures.Count(variants => variants.All(variant => variant.IsProven)),
            NotChecked = procedures.Count(variants => variants.Any(variant => variant.Procedure.HasErrors)),
            ByRule =
            [
                .. report.Findings
                    .CountBy(reported => reported.Finding.Rule)
                    .OrderByDescending(rule => rule.Value)
                    .ThenBy(rule => rule.Key.Code, StringComparer.Ordinal)
                    .Select(rule => new RuleCount(rule.Key.Code, rule.Key.Name, rule.Value)),
            ],
        };

        int Count(Severity severity) => report.Findings.Count(reported => reported.Severity == severity);
    }
}

/// <summary>How often a rule has something to say.</summary>
/// <param name="Rule">Its code.</param>
/// <param name="Name">Its name.</param>
/// <param name="Count">How many findings it has.</param>
public sealed record RuleCount(string Rule, string Name, int Count);
