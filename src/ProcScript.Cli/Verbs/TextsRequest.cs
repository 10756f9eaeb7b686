using ProcScript.Analysis.Messages;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>texts</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Language">The language of the translations.</param>
/// <param name="File">The file that goes to the translator or comes from there, as typed.</param>
internal sealed record TextsRequest(InputRequest Input, PackLanguage Language, string File);
