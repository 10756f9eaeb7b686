using System.Collections.Frozen;
using System.Collections.Immutable;

namespace ProcScript.Model.Binding.Properties;

/// <summary>Which properties a block takes, for those who write one.</summary>
public static class PropertyWords
{
    /// <summary>The words that name the properties of a block, in alphabetical order; none for a block without properties.</summary>
    /// <param name="block">The word that opens the block: <c>energy</c>, <c>held</c>, <c>fastener</c> …</param>
    public static ImmutableArray<string> In(string block) => Holder(block) is var holder and not PropertyHolders.None ? [.. PropertyTable.KeywordsOf(holder)] : [];

    /// <summary>The words that name the properties of an action on an item.</summary>
    public static ImmutableArray<string> InActions { get; } = [.. PropertyTable.KeywordsOf(PropertyHolders.ItemAction)];

    /// <summary>The words that name the properties of a measurement, task or check.</summary>
    public static ImmutableArray<string> InTexts { get; } = [.. PropertyTable.KeywordsOf(PropertyHolders.TextAction)];

    /// <summary>The words that name the properties of what an action is like in the refit.</summary>
    public static ImmutableArray<string> InRefits { get; } = [.. PropertyTable.KeywordsOf(PropertyHolders.Refit)];

    /// <summary>Whether a word begins a property of some block.</summary>
    public static bool IsProperty(string word) => Beginnings.Contains(word);

    private static readonly FrozenSet<string> Beginnings = PropertyTable.Keywords.Select(keyword => keyword.Split(' ')[0]).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Whether a property stands in a block but once.</summary>
    public static bool StandsOnce(string property) => PropertyTable.Find(property) is { Repeats: false };

    /// <summary>Whether a block belongs to the catalog, and so to no machine.</summary>
    public static bool IsOfCatalog(string block) => Holder(block) is PropertyHolders.Tool or PropertyHolders.Supply or PropertyHolders.Certificate or PropertyHolders.Kind;

    private static PropertyHolders Holder(string block) => block switch
    {
        "tool" => PropertyHolders.Tool,
        "supply" => PropertyHolders.Supply,
        "certificate" => PropertyHolders.Certificate,
        "fastener" or "clip" or "connector" or "line" or "bond" => PropertyHolders.Kind,
        "energy" => PropertyHolders.Energy,
        "fluid" => PropertyHolders.Fluid,
        "control" => PropertyHolders.Control,
        "part" => PropertyHolders.Part,
        "held" or "wired" or "piped" => PropertyHolders.Joint,
        "covered" or "locked" => PropertyHolders.Cover,
        "procedure" => PropertyHolders.Procedure,
        "verify" => PropertyHolders.Verification,
        _ => PropertyHolders.None,
    };
}
