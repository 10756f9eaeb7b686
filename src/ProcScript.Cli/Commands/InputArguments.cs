using System.CommandLine;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments that say what to read, the same for every command that reads a library.</summary>
/// <param name="orHere">Whether the current folder is meant where nothing is named.</param>
internal sealed class InputArguments(bool orHere = false)
{
    /// <summary>What the help says of them.</summary>
    public const string Note =
        """
        The library root is the nearest folder above all PATHs that holds a procscript.json or a .git; without
        one, the current folder if all PATHs lie in it, else the nearest folder that holds them all. 'use' may
        reach any file below the root. Files that are only used are checked too, and their errors are shown.
        """;

    private readonly Argument<string[]> _paths = new("PATH")
    {
        Description = "A .proc file, a folder of them, or - for the standard input." + (orHere ? " Without one, the current folder." : ""),
        Arity = orHere ? ArgumentArity.ZeroOrMore : ArgumentArity.OneOrMore,
    };

    private readonly Option<string?> _root = new("--root")
    {
        Description = "The library's root folder.",
        HelpName = "DIR",
    };

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Add(_paths);
        command.Add(_root);
    }

    /// <summary>Whether anything was named.</summary>
    public bool AreTyped(ParseResult parsed) => parsed.GetValue(_paths) is { Length: > 0 };

    /// <summary>What was typed.</summary>
    public InputRequest Read(ParseResult parsed) =>
        new(parsed.GetValue(_paths) is { Length: > 0 } paths ? [.. paths] : ["."], parsed.GetValue(_root));
}
