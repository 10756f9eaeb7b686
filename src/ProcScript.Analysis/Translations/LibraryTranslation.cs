using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Model.Texts;

namespace ProcScript.Analysis.Translations;

/// <summary>What is known of a library's texts in another language: the file of translations that lies beside its sources.</summary>
public sealed class LibraryTranslation
{
    private readonly ImmutableDictionary<(string Path, string Key), TranslationUnit> _units;

    private LibraryTranslation(PackLanguage language, string path, XliffFile file)
    {
        Language = language;
        Path = path;
        File = file;
        _units = file.Units.GroupBy(unit => (unit.Path, unit.Key)).ToImmutableDictionary(same => same.Key, same => same.First());
    }

    /// <summary>The language.</summary>
    public PackLanguage Language { get; }

    /// <summary>The file, from the library's root.</summary>
    public string Path { get; }

    /// <summary>What stands in it.</summary>
    public XliffFile File { get; }

    /// <summary>Reads the translations into a language; without a file there are none.</summary>
    public static LibraryTranslation Read(ISourceStore store, string folder, PackLanguage language)
    {
        ArgumentNullException.ThrowIfNull(store);
        var path = PathOf(folder, language);
        var reading = store.Read(path);
        var file = reading.Content is { } content ? XliffFile.Read(content)
            : XliffFile.None(reading.Outcome == SourceOutcome.Missing ? "" : reading.Detail.Length > 0 ? reading.Detail : "it cannot be read");
        return new LibraryTranslation(language, path, file);
    }

    /// <summary>Where the translations into a language lie.</summary>
    public static string PathOf(string folder, PackLanguage language) => $"{folder}/{language.Tag()}.xlf";

    /// <summary>The translation of a text, where the text is still what was translated; else null.</summary>
    public string? Find(string path, AuthorTextUnit unit) =>
        Known(path, unit) is { Target.Length: > 0 } known && known.Source == unit.Source ? known.Target : null;

    /// <summary>What is written down of a text, translated or not, of this or of an earlier wording; null where nothing is.</summary>
    public TranslationUnit? Known(string path, AuthorTextUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return _units.GetValueOrDefault((path, unit.Key));
    }

    /// <summary>The store whose library is told in this language.</summary>
    public ISourceStore Over(ISourceStore store)
    {
        ArgumentNullException.ThrowIfNull(store);
        return new TranslatedSourceStore(store, new LibraryTexts((path, units) =>
            units.Select(unit => (unit.Key, Target: Find(path, unit))).Where(one => one.Target is not null).DistinctBy(one => one.Key).ToDictionary(one => one.Key, one => one.Target!)));
    }

    /// <summary>Every text of a library with what is written down of it, as a translator gets it.</summary>
    public IEnumerable<TranslationUnit> Units(Library library)
    {
        ArgumentNullException.ThrowIfNull(library);
        return library.Trees.SelectMany(file => AuthorTextUnits.Of(file.Value).Select(unit =>
            new TranslationUnit(file.Key, unit.Key, unit.Source, Find(file.Key, unit) ?? "")));
    }
}
