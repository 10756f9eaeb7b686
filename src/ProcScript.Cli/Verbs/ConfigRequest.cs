using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>config</c> is asked to do.</summary>
/// <param name="Input">The path that is asked about.</param>
/// <param name="Settings">What is chosen on the command line.</param>
/// <param name="IsForPrograms">Whether to print JSON.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record ConfigRequest(InputRequest Input, SettingsRequest Settings, bool IsForPrograms, ColourChoice Colour);
