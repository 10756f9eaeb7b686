using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Analysis.Reports;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Reports;

/// <summary>What a check came to and how it is to be told: all that an output is rendered from.</summary>
internal sealed record CheckOutcome
{
    /// <summary>What was found.</summary>
    public required LibraryReport Report { get; init; }

    /// <summary>How files are named to other programs.</summary>
    public required RepositoryPaths Paths { get; init; }

    /// <summary>How many files were asked about.</summary>
    public required int FileCount { get; init; }

    /// <summary>Whether one of these could not be read.</summary>
    public bool HasUnreadableInput { get; init; }

    /// <summary>The least severity that fails the run; null where none does.</summary>
    public Severity? FailOn { get; init; }

    /// <summary>How many findings are told at most; null for all.</summary>
    public int? MostFindings { get; init; }

    /// <summary>Whether long lists in findings are printed in full.</summary>
    public bool NamesAll { get; init; }

    /// <summary>When the check was made and how long it took; null where that is not to be told.</summary>
    public CheckTime? Time { get; init; }

    /// <summary>The numbers.</summary>
    public ReportCounts Counts => field ??= ReportCounts.Of(Report);

    /// <summary>The findings to tell.</summary>
    public ImmutableArray<ReportedFinding> Listed => Report.Findings.Length > MostFindings ? Report.Findings[..MostFindings.Value] : Report.Findings;

    /// <summary>How many findings are not told.</summary>
    public int NotListed => Report.Findings.Length - Listed.Length;

    /// <summary>Whether a finding fails the run.</summary>
    public bool Fails(ReportedFinding reported) => reported.Severity >= FailOn;
}

/// <summary>When a check was made.</summary>
/// <param name="Started">When it began.</param>
/// <param name="Elapsed">How long it took.</param>
internal sealed record CheckTime(DateTimeOffset Started, TimeSpan Elapsed);
