using System.Collections.Immutable;
using ProcScript.Analysis.Crews;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>build</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What is chosen about the checks.</param>
/// <param name="Output">The folder to write to, as typed.</param>
/// <param name="Formats">What to write.</param>
/// <param name="With">The options that the machine has.</param>
/// <param name="Procedure">The one procedure to build, or null for all.</param>
/// <param name="Templates">The folder of the shop's own templates, as typed, or null.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record BuildRequest(
    InputRequest Input,
    SettingsRequest Settings,
    string Output,
    ImmutableArray<PackFormat> Formats,
    ImmutableArray<string> With,
    string? Procedure,
    string? Templates,
    ColourChoice Colour)
{
    /// <summary>How many people the packs are for; null for nobody in particular.</summary>
    public CrewSize? Crew { get; init; }

    /// <summary>Whether an exact plan of who does what is asked for.</summary>
    public bool Exact { get; init; }

    /// <summary>How long one may be searched for, in seconds; null for the usual limit.</summary>
    public double? Seconds { get; init; }
}
