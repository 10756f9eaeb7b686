using System.Collections.Concurrent;
using System.Collections.Immutable;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Translations;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis;

/// <summary>What a shop has chosen about the checks, for the whole library.</summary>
public sealed record CheckSettings
{
    private ConcurrentDictionary<string, PathSettings> _ofPaths = new(StringComparer.Ordinal);

    /// <summary>What holds where nothing is chosen.</summary>
    public static CheckSettings Usual { get; } = new();

    /// <summary>The day of the check, after which allowances with an earlier last day are over; null where none is ever over.</summary>
    public DateOnly? Today { get; init; }

    /// <summary>What holds for no path in particular.</summary>
    public PathSettings Everywhere => For("");

    /// <summary>The authors' texts in the language of the packs; null where they are written in it.</summary>
    public LibraryTranslation? Translation { get; init; }

    /// <summary>What is wrong with the settings themselves.</summary>
    public ImmutableArray<Finding> Findings { get; internal init; } = [];

    /// <summary>The settings files that were come across, those that are not read among them.</summary>
    public ImmutableArray<SourceText> Files { get; internal init; } = [];

    /// <summary>The choices, each outweighing those before it.</summary>
    internal ImmutableArray<SettingsLayer> Layers
    {
        get;
        init
        {
            field = value;
            _ofPaths = new ConcurrentDictionary<string, PathSettings>(StringComparer.Ordinal);
        }
    } = [];

    /// <summary>What holds for a path of the library.</summary>
    public PathSettings For(string path) => _ofPaths.GetOrAdd(
        Layers.Any(layer => layer.Paths is not null) ? path : "",
        one => Layers.Where(layer => layer.Paths?.Match(one) ?? true).Aggregate(PathSettings.BuiltIn, (settings, layer) => settings.With(layer)));

    /// <summary>The same with the translations of a library, where its packs are in another language than its texts.</summary>
    public CheckSettings WithTranslation(ISourceStore store)
    {
        var language = Everywhere.Get(SettingsTable.Language);
        return this with
        {
            Translation = language == Everywhere.Get(SettingsTable.TextsLanguage) ? null : LibraryTranslation.Read(store, Everywhere.Get(SettingsTable.TextsFolder), language),
        };
    }

    /// <summary>The same with a choice that outweighs all others, for every path.</summary>
    public CheckSettings With<T>(Setting<T> setting, T value)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(setting);
        var chosen = new ChosenValue(value, SettingOrigin.CommandLine);
        return this with { Layers = Layers.Add(new SettingsLayer { Values = ImmutableDictionary<Setting, ChosenValue>.Empty.Add(setting, chosen) }) };
    }

    /// <summary>Whether these settings were read from files with the same texts as others, and so choose the same.</summary>
    public bool ChoosesAs(CheckSettings other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Files.Select(file => (file.Path, file.Content)).SequenceEqual(other.Files.Select(file => (file.Path, file.Content)));
    }
}
