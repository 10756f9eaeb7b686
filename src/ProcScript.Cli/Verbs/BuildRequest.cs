using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>build</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What the shop has chosen.</param>
/// <param name="Output">The folder to write to, as typed.</param>
/// <param name="Formats">What to write.</param>
/// <param name="With">The options that the machine has.</param>
/// <param name="Procedure">The one procedure to build, or null for all.</param>
/// <param name="Templates">The folder of the shop's own templates, as typed, or null.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record BuildRequest(
    InputRequest Input,
    CheckSettings Settings,
    string Output,
    ImmutableArray<PackFormat> Formats,
    ImmutableArray<string> With,
    string? Procedure,
    string? Templates,
    ColourChoice Colour);
