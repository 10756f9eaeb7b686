using ProcScript.Cli.Caching;
using ProcScript.Cli.Output;
using ProcScript.Cli.Reports;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>check</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What is chosen about the checks.</param>
/// <param name="Since">The revision to check the changes since, or null to check everything.</param>
/// <param name="FailOn">The least severity that fails the run; null where none does.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record CheckRequest(InputRequest Input, SettingsRequest Settings, string? Since, Severity? FailOn, ColourChoice Colour)
{
    /// <summary>The form in which to tell it; null for the one for people.</summary>
    public CheckFormat? Format { get; init; }

    /// <summary>The file to tell it in, as typed; null for the output.</summary>
    public string? Output { get; init; }

    /// <summary>The baseline to hold the findings against, as typed; null for none.</summary>
    public string? Baseline { get; init; }

    /// <summary>How many findings to tell at most; null for all.</summary>
    public int? MostFindings { get; init; }

    /// <summary>Whether to print long lists in findings in full.</summary>
    public bool NamesAll { get; init; }

    /// <summary>Whether to leave out the last line, which says what the check comes to.</summary>
    public bool Quiet { get; init; }

    /// <summary>Whether to say how long it took, even where no person reads it.</summary>
    public bool Time { get; init; }

    /// <summary>What is asked of the cache.</summary>
    public required CacheRequest Cache { get; init; }

    /// <summary>Whether it is told how long the check took: on a terminal always.</summary>
    public bool TellsTime(Surroundings around) => Time || (around.OutputIsTerminal && Output is null);

    /// <summary>
    /// Whether the same may be told again while sources and settings are the same: what has changed since a revision Git says, a baseline is
    /// no source, a file is to be written, and a time is that of one run.
    /// </summary>
    public bool CanBeToldAgain(Surroundings around) => Since is null && Baseline is null && Output is null && !TellsTime(around);
}
