using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>draft</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What is chosen about the checks.</param>
/// <param name="Diff">Whether to show the changes and write nothing.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record DraftVerbRequest(InputRequest Input, SettingsRequest Settings, bool Diff, ColourChoice Colour);
