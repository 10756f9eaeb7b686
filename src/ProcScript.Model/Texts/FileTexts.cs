using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Texts;

/// <summary>The authors' texts of a file, by where they stand, with their translations.</summary>
internal sealed class FileTexts
{
    private readonly LibraryTexts _texts;
    private readonly IReadOnlyDictionary<string, string> _translations;
    private readonly Dictionary<TextSpan, string> _keys = [];

    /// <summary>Takes the texts of a file and what is known of them.</summary>
    public FileTexts(LibraryTexts texts, ImmutableArray<AuthorTextUnit> units, IReadOnlyDictionary<string, string> translations)
    {
        _texts = texts;
        _translations = translations;
        foreach (var unit in units)
        {
            _keys[unit.Span] = unit.Key;
        }
    }

    /// <summary>The translation of what stands there; null where there is none.</summary>
    public string? Find(TextSpan span) => _keys.TryGetValue(span, out var key) ? _translations.GetValueOrDefault(key) : null;

    /// <summary>The translation of a word that is filled into texts; the word itself where there is none.</summary>
    public string Word(string word) => FindWord(word) ?? Binding.Places.AuthorText.Words(word);

    /// <summary>The same; null where there is none.</summary>
    public string? FindWord(string word) => _translations.GetValueOrDefault(AuthorTextUnits.KeyOfWord(word));

    /// <summary>A text between marks.</summary>
    public string Marked(string source, string? target) => source.Length == 0 ? source : _texts.Marked(source, target);
}
