using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>format</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Mode">What to do with files that are laid out otherwise.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record FormatRequest(InputRequest Input, FormatMode Mode, ColourChoice Colour);

/// <summary>What <c>format</c> does with a file that is laid out otherwise.</summary>
internal enum FormatMode
{
    /// <summary>Writes it anew.</summary>
    Write,

    /// <summary>Names it.</summary>
    Check,

    /// <summary>Shows what would change.</summary>
    Diff,
}
