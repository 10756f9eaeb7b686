using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>baseline write</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What the shop has chosen.</param>
/// <param name="Output">The file to write, as typed.</param>
/// <param name="AcceptNew">Whether findings that a baseline of that name does not know are added to it.</param>
internal sealed record BaselineRequest(InputRequest Input, SettingsRequest Settings, string Output, bool AcceptNew);
