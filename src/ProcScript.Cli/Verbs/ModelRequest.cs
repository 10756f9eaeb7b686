using System.Collections.Immutable;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>model</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Machine">The machine to write; null for all.</param>
/// <param name="With">The options of the variant to write; null for all variants.</param>
/// <param name="Output">The file to write to; null for the output.</param>
/// <param name="Colour">When to print findings in colour.</param>
internal sealed record ModelRequest(InputRequest Input, string? Machine, ImmutableArray<string>? With, string? Output, ColourChoice Colour);
