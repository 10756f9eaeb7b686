using ProcScript.Analysis;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What of the settings is chosen on the command line; all else the library's own settings say.</summary>
/// <param name="Wording">What texts are held to; null where nothing is said.</param>
internal sealed record SettingsRequest(WordingChoice? Wording)
{
    /// <summary>The day of the check; null for today.</summary>
    public DateOnly? Today { get; init; }

    /// <summary>The language of the packs; null where nothing is said.</summary>
    public PackLanguage? Language { get; init; }

    /// <summary>How cards are printed; null where nothing is said.</summary>
    public CardLayout? Layout { get; init; }

    /// <summary>What bag labels are printed on; null where nothing is said.</summary>
    public LabelStock? Labels { get; init; }

    /// <summary>The settings of a library with what is chosen here, for a check on a day, unless another one is asked for.</summary>
    public CheckSettings Read(ISourceStore store, DateOnly today) => Read(store) with { Today = Today ?? today };

    /// <summary>The settings of a library with what is chosen here.</summary>
    public CheckSettings Read(ISourceStore store)
    {
        var settings = SettingsReader.Read(store) with { Today = Today };
        settings = Wording is { } wording ? settings.With(SettingsTable.Wording, wording) : settings;
        settings = Language is { } language ? settings.With(SettingsTable.Language, language).WithTranslation(store) : settings;
        settings = Layout is { } layout ? settings.With(SettingsTable.Layout, layout) : settings;
        return Labels is { } labels ? settings.With(SettingsTable.Labels, labels) : settings;
    }
}
