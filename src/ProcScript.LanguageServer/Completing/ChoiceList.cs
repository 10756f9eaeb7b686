using System.Collections.Immutable;
using System.Globalization;
using ProcScript.LanguageServer.Protocol;

namespace ProcScript.LanguageServer.Completing;

/// <summary>What is offered at a place, group by group; whatever comes twice stands where it came first.</summary>
internal sealed class ChoiceList
{
    /// <summary>The number by which the protocol tells a word of the language.</summary>
    public const int Keyword = 14;

    /// <summary>The number of a word with places to fill in.</summary>
    public const int Snippet = 15;

    /// <summary>The number of a unit.</summary>
    public const int Unit = 11;

    private const int Reference = 18;

    private readonly List<CompletionItem> _items = [];
    private readonly HashSet<string> _labels = new(StringComparer.Ordinal);

    /// <summary>The items in their order.</summary>
    public ImmutableArray<CompletionItem> Items =>
        [.. _items.Select((item, index) => item with { SortText = index.ToString("D5", CultureInfo.InvariantCulture) })];

    /// <summary>Adds an item behind those that are there.</summary>
    public void Add(CompletionItem item)
    {
        if (_labels.Add(item.Label))
        {
            _items.Add(item);
        }
    }

    /// <summary>Adds items behind those that are there.</summary>
    public void Add(IEnumerable<CompletionItem> items)
    {
        foreach (var item in items)
        {
            Add(item);
        }
    }

    /// <summary>A name.</summary>
    public static CompletionItem Name(string name, string detail) => new(name, Reference) { Detail = detail };

    /// <summary>A word of the language.</summary>
    public static CompletionItem Word(string word, string detail) => new(word, Keyword) { Detail = detail };
}
