using System.CommandLine;
using ProcScript.Cli.Caching;

namespace ProcScript.Cli.Commands;

/// <summary><c>--cache</c> and <c>--no-cache</c>.</summary>
internal sealed class CacheOptions
{
    /// <summary>What the help says of them.</summary>
    public const string Note =
        """
        What a check of many files printed is remembered in the user's own cache folder, and printed again while program,
        arguments, settings, day and every file read are the same. The cache may be deleted at any time. It is not used
        with --since, --baseline, --output or a time, nor on a terminal, nor for the standard input.
        """;

    private readonly Option<string?> _folder = new("--cache")
    {
        Description = "Remember answers in DIR, as a build server may want that keeps it between runs.",
        HelpName = "DIR",
    };

    private readonly Option<bool> _off = new("--no-cache") { Description = "Check everything anew, and remember nothing." };

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Add(_folder);
        command.Add(_off);
    }

    /// <summary>What was typed.</summary>
    public CacheRequest Read(ParseResult parsed) =>
        new(parsed.GetValue(_folder), parsed.GetValue(_off), [.. parsed.Tokens.Select(token => token.Value)]);
}
