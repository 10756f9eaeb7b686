using System.Collections.Immutable;
using System.CommandLine;

namespace ProcScript.Cli.Commands;

/// <summary>A command with examples of its use.</summary>
/// <param name="name">The verb.</param>
/// <param name="description">What it does.</param>
internal sealed class VerbCommand(string name, string description) : Command(name, description)
{
    /// <summary>What its help says besides the options, a paragraph each.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>How it is used.</summary>
    public required ImmutableArray<(string Line, string Meaning)> Examples { get; init; }
}
