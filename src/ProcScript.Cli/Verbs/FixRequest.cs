using ProcScript.Analysis.Mending;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>fix</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What is chosen about the checks.</param>
/// <param name="Mend">What to mend.</param>
/// <param name="Diff">Whether to show the changes and write nothing.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record FixRequest(InputRequest Input, SettingsRequest Settings, MendRequest Mend, bool Diff, ColourChoice Colour);
