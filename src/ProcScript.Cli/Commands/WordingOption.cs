using System.CommandLine;
using ProcScript.Analysis.Settings;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The option <c>--wording</c>: which rules of wording hold.</summary>
internal sealed class WordingOption
{
    private readonly Option<string?> _wording = new("--wording")
    {
        Description = "Whether texts are held to the rules that know English, or only to those of any language; the settings say it otherwise.",
        HelpName = "english|neutral",
    };

    /// <summary>Makes the option.</summary>
    public WordingOption() => _wording.AcceptOnlyFromAmong("english", "neutral");

    /// <summary>Adds it to a command.</summary>
    public void AddTo(Command command) => command.Add(_wording);

    /// <summary>What is asked for.</summary>
    public SettingsRequest Read(ParseResult parsed) => new(parsed.GetValue(_wording) switch
    {
        "neutral" => WordingChoice.Neutral,
        "english" => WordingChoice.English,
        _ => null,
    });
}
