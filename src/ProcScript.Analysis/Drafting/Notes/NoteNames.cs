using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>The items that notes speak of, by the names that they get.</summary>
internal sealed class NoteNames
{
    private readonly Dictionary<string, (ItemSort Sort, string Title)> _items = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> _properties = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _owners = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _counts = new(StringComparer.Ordinal);

    /// <summary>The item that words stand for; it is there from now on.</summary>
    public string Of(string words, ItemSort sort)
    {
        var name = DraftWords.Name(words);
        name = name.Length == 0 ? sort == ItemSort.Part ? "body" : Fallback(sort) : NameText.IsName(name) ? name : name + "_" + Fallback(sort);
        if (sort == ItemSort.Part && !_items.ContainsKey(name) && Known("_" + name) is { } whole)
        {
            return whole;
        }

        if (_items.TryGetValue(name, out var known) && known.Sort != sort)
        {
            name += "_" + Fallback(sort);
        }

        _items.TryAdd(name, (sort, words.Length == 0 ? DraftWords.Words(name) : words));
        return name;
    }

    /// <summary>Whether an item of this name is a part.</summary>
    public bool IsPart(string name) => _items.TryGetValue(name, out var item) && item.Sort == ItemSort.Part;

    /// <summary>What people call an item.</summary>
    public string TitleOf(string name) => _items.TryGetValue(name, out var item) ? item.Title : DraftWords.Words(name);

    /// <summary>Says something of an item, once.</summary>
    public void Say(string item, string property)
    {
        if (property.Length > 0 && !Said(item).Any(one => one.Split(' ')[0] == property.Split(' ')[0]))
        {
            Said(item).Add(property);
        }
    }

    /// <summary>Says which part a joint ties.</summary>
    public void Owns(string part, string joint) => _owners.TryAdd(joint, part);

    /// <summary>Says how many pieces a joint has.</summary>
    public void Count(string joint, int count) => _counts.TryAdd(joint, count);

    /// <summary>The joint whose name ends in these words; null where none or several do.</summary>
    public string? Joint(string words)
    {
        var name = DraftWords.Name(words);
        var found = _items.Where(item => ItemSorts.IsJoint(item.Value.Sort) && (item.Key == name || item.Key.EndsWith("_" + name, StringComparison.Ordinal))).ToList();
        return found is [var only] ? only.Key : null;
    }

    /// <summary>The fluid, where there is only one.</summary>
    public string? OnlyFluid() => _items.Where(item => item.Value.Sort == ItemSort.Fluid).Select(item => item.Key).ToList() is [var only] ? only : null;

    /// <summary>All that is said of an item.</summary>
    public IEnumerable<string> SaidOf(string item) => Said(item).Append(TitleOf(item)).Append(_counts.TryGetValue(item, out var count) ? count.ToString(CultureInfo.InvariantCulture) : "");

    /// <summary>The one joint that a sentence speaks of in the words of its name; null where it speaks of none or of several.</summary>
    public string? JointIn(string sentence) => _items
        .Where(item => ItemSorts.IsJoint(item.Value.Sort) && sentence.Contains(DraftWords.Words(item.Key), StringComparison.OrdinalIgnoreCase))
        .Select(item => item.Key).ToList() is [var only] ? only : JointByNoun(sentence);

    /// <summary>The one joint of the hardware that a sentence speaks of: "nuts to 20 Nm" where only one joint is of nuts.</summary>
    private string? JointByNoun(string sentence)
    {
        var nouns = sentence.Split([' ', ',', '.', '(', ')', ':'], StringSplitOptions.RemoveEmptyEntries).Where(word => ItemSorts.OfWord(word) is ItemSort.Fastener)
            .Select(DraftWords.Singular).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        return nouns is [var noun]
            && _items.Where(item => item.Value.Sort == ItemSort.Fastener && DraftWords.Singular(DraftWords.LastWord(item.Key)).Equals(noun, StringComparison.OrdinalIgnoreCase)).Select(item => item.Key).ToList() is [var only]
                ? only
                : null;
    }

    /// <summary>All that was said.</summary>
    public ImmutableDictionary<string, ItemFacts> Facts() => _items.ToImmutableDictionary(
        item => item.Key,
        item => new ItemFacts { Title = item.Value.Title, Properties = [.. Said(item.Key)], Owner = _owners.GetValueOrDefault(item.Key), Count = _counts.GetValueOrDefault(item.Key) },
        StringComparer.Ordinal);

    private List<string> Said(string item)
    {
        if (!_properties.TryGetValue(item, out var said))
        {
            _properties[item] = said = [];
        }

        return said;
    }

    /// <summary>The one part whose name ends so: who wrote <c>front guard</c> first goes on with <c>guard</c>.</summary>
    private string? Known(string end) =>
        _items.Where(item => item.Value.Sort == ItemSort.Part && item.Key.EndsWith(end, StringComparison.Ordinal)).Select(item => item.Key).ToList() is [var only] ? only : null;

    private static string Fallback(ItemSort sort) => sort switch
    {
        ItemSort.Fastener => "bolts",
        ItemSort.Connector => "plug",
        ItemSort.Line => "hose",
        _ => sort.ToString().ToLower(CultureInfo.InvariantCulture),
    };
}
