using System.CommandLine;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Commands;

/// <summary>The options that say where a library is, for commands whose arguments are things in it.</summary>
internal sealed class LibraryOptions
{
    private readonly Option<string[]> _in = new("--in")
    {
        Description = "The library: a folder, or a file with all that it uses; may be given several times. Without it, the current folder.",
        HelpName = "PATH",
    };

    private readonly Option<string?> _root = new("--root") { Description = "The library's root folder.", HelpName = "DIR" };

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Add(_in);
        command.Add(_root);
    }

    /// <summary>What was typed.</summary>
    public InputRequest Read(ParseResult parsed) =>
        new(parsed.GetValue(_in) is { Length: > 0 } paths ? [.. paths] : ["."], parsed.GetValue(_root));
}
