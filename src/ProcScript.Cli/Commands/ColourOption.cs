using System.CommandLine;
using ProcScript.Cli.Output;

namespace ProcScript.Cli.Commands;

/// <summary><c>--color</c>, the same for every command that prints findings.</summary>
internal sealed class ColourOption
{
    private readonly Option<string> _option = new("--color")
    {
        Description = "When to print in colour; auto is on a terminal unless NO_COLOR is set.",
        HelpName = "auto|always|never",
        DefaultValueFactory = _ => "auto",
    };

    /// <summary>Adds it to a command.</summary>
    public void AddTo(Command command)
    {
        _option.AcceptOnlyFromAmong("auto", "always", "never");
        command.Add(_option);
    }

    /// <summary>What was typed.</summary>
    public ColourChoice Read(ParseResult parsed) => parsed.GetValue(_option) switch
    {
        "always" => ColourChoice.Always,
        "never" => ColourChoice.Never,
        _ => ColourChoice.Auto,
    };
}
