using System.CommandLine;
using ProcScript.Analysis.Messages;

namespace ProcScript.Cli.Commands;

/// <summary>The option <c>--language</c>: what packs are written in.</summary>
internal sealed class LanguageOption
{
    private readonly Option<string?> _language = new("--language")
    {
        Description = "The language that packs are written in, but for the author's own words; the settings say it otherwise.",
        HelpName = string.Join('|', Tags),
    };

    /// <summary>Makes the option.</summary>
    /// <param name="isRequired">Whether it has to be given.</param>
    public LanguageOption(bool isRequired = false)
    {
        _language.Required = isRequired;
        _language.CompletionSources.Add(_ => Tags.Select(tag => new System.CommandLine.Completions.CompletionItem(tag)));
        _language.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } tag && PackLanguages.Find(tag) is null)
            {
                result.AddError($"packs are not written in '{tag}': choose among {string.Join(", ", Tags)}.");
            }
        });
    }

    private static IEnumerable<string> Tags => PackLanguages.All.Select(PackLanguages.Tag);

    /// <summary>Adds it to a command.</summary>
    public void AddTo(Command command) => command.Add(_language);

    /// <summary>What is asked for; null where nothing is.</summary>
    public PackLanguage? Read(ParseResult parsed) => parsed.GetValue(_language) is { } tag ? PackLanguages.Find(tag) : null;
}
