using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>check</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What is chosen about the checks.</param>
/// <param name="Since">The revision to check the changes since, or null to check everything.</param>
/// <param name="FailOn">The least severity that fails the run; null where none does.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record CheckRequest(InputRequest Input, SettingsRequest Settings, string? Since, Severity? FailOn, ColourChoice Colour);
