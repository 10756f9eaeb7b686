using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Model.Names;

namespace ProcScript.Analysis.Drafting;

/// <summary>Tells the sort of an item by the verb that a step uses on it, by the state that a condition asks of it or, failing that, by its name.</summary>
internal static class ItemSorts
{
    private static readonly FrozenDictionary<string, ItemSort> ByVerb = Table(
        (ItemSort.Fastener, ["undo", "loosen", "fasten", "tighten", "snug", "retorque"]),
        (ItemSort.Clip, ["release", "engage"]),
        (ItemSort.Connector, ["unplug", "plug"]),
        (ItemSort.Line, ["disconnect", "connect"]),
        (ItemSort.Bond, ["cut", "renew"]),
        (ItemSort.Part, ["aside", "remove", "strip", "support", "return", "fit", "unsupport"]),
        (ItemSort.Control, ["set"]),
        (ItemSort.Energy, ["isolate", "verify", "restore"]),
        (ItemSort.Fluid, ["empty", "fill"]));

    private static readonly FrozenDictionary<string, ItemSort> ByState = Table(
        (ItemSort.Energy, ["live", "isolated"]),
        (ItemSort.Part, ["out", "fitted", "aside", "supported"]),
        (ItemSort.Fluid, ["full", "empty"]));

    private static readonly FrozenDictionary<ItemSort, (string Sentence, string Keyword)> Joints = new Dictionary<ItemSort, (string, string)>
    {
        [ItemSort.Fastener] = ("held by", "fastener"),
        [ItemSort.Clip] = ("held by", "clip"),
        [ItemSort.Bond] = ("held by", "bond"),
        [ItemSort.Connector] = ("wired by", "connector"),
        [ItemSort.Line] = ("piped by", "line"),
    }.ToFrozenDictionary();

    /// <summary>The sort that a verb is for; null for work, which is done to anything.</summary>
    public static ItemSort? OfVerb(string verb) => ByVerb.TryGetValue(verb, out var sort) ? sort : null;

    /// <summary>The sort that a state is one of; null where several have it.</summary>
    public static ItemSort? OfState(string state) => ByState.TryGetValue(state, out var sort) ? sort : null;

    /// <summary>The sort of hardware, energy or fluid that a word stands for in the shop; null for any other word.</summary>
    public static ItemSort? OfWord(string word) => ShopWords.SortOf(DraftWords.Singular(word)) is { } sort ? Enum.Parse<ItemSort>(sort, ignoreCase: true) : null;

    /// <summary>The sort that the last two words of several stand for, else the last; null where they stand for none.</summary>
    public static ItemSort? OfWords(string words) => words.Split(' ', StringSplitOptions.RemoveEmptyEntries) switch
    {
        [.., var first, var last] => OfWord($"{first} {last}") ?? OfWord(last),
        [var only] => OfWord(only),
        _ => null,
    };

    /// <summary>The sort that a name speaks of by its last word; a part where it says nothing.</summary>
    public static ItemSort OfName(string name) => OfWord(DraftWords.LastWord(name)) ?? ItemSort.Part;

    /// <summary>Whether things of this sort tie parts.</summary>
    public static bool IsJoint(ItemSort sort) => Joints.ContainsKey(sort);

    /// <summary>How a part says that a joint ties it.</summary>
    public static string Sentence(ItemSort joint) => Joints[joint].Sentence;

    /// <summary>The word that declares a kind of such joints.</summary>
    public static string Keyword(ItemSort joint) => Joints[joint].Keyword;

    private static FrozenDictionary<string, ItemSort> Table(params ReadOnlySpan<(ItemSort Sort, ImmutableArray<string> Words)> rows)
    {
        var table = new Dictionary<string, ItemSort>(StringComparer.OrdinalIgnoreCase);
        foreach (var (sort, words) in rows)
        {
            foreach (var word in words)
            {
                table[word] = sort;
            }
        }

        return table.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);
    }
}
