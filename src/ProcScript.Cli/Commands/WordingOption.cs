using System.CommandLine;
using ProcScript.Analysis;

namespace ProcScript.Cli.Commands;

/// <summary>The option <c>--wording</c>: which rules of wording hold.</summary>
internal sealed class WordingOption
{
    private readonly Option<string> _wording = new("--wording")
    {
        Description = "Whether texts are held to the rules that know English, or only to those of any language.",
        HelpName = "english|neutral",
        DefaultValueFactory = _ => "english",
    };

    /// <summary>Makes the option.</summary>
    public WordingOption() => _wording.AcceptOnlyFromAmong("english", "neutral");

    /// <summary>Adds it to a command.</summary>
    public void AddTo(Command command) => command.Add(_wording);

    /// <summary>What is asked for.</summary>
    public CheckSettings Read(ParseResult parsed) => CheckSettings.Usual with { EnglishWording = parsed.GetValue(_wording) != "neutral" };
}
