using System.Collections.Frozen;
using System.Collections.Immutable;

namespace ProcScript.Model.Names;

/// <summary>The words by which the shop calls hardware, energies and fluids, each with the word that declares such a thing, or a kind of it.</summary>
public static class ShopWords
{
    private static readonly ImmutableArray<(string Sort, ImmutableArray<string> Words, ImmutableArray<string> OfKinds)> Rows =
    [
        ("fastener", ["bolt", "screw", "nut", "stud", "fastener"], ["washer"]),
        ("clip", ["clip", "pin", "latch", "catch", "snap", "circlip", "rivet", "buckle", "tab washer", "lock tab", "bolt cap", "bolt cover", "screw cap", "screw cover", "nut cap", "nut cover"], ["ring", "tab", "cap", "clamp"]),
        ("bond", ["tie", "tape", "adhesive", "glue", "sealant", "lock wire", "lockwire", "locking wire", "safety wire"], ["seal", "wire"]),
        ("connector", ["plug", "connector", "wire", "lead", "cable", "terminal", "spade"], []),
        ("line", ["hose", "pipe", "union", "line", "tube", "fitting", "coupling"], []),
        ("energy", ["mains", "power", "supply", "pressure", "voltage"], []),
        ("fluid", ["oil", "coolant", "water", "fuel", "refrigerant", "fluid", "petrol", "diesel"], []),
    ];

    private static readonly FrozenDictionary<string, string> ByWord = Rows
        .SelectMany(row => row.Words.Select(word => KeyValuePair.Create(word, row.Sort)))
        .ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>The sort of what a word stands for, or two of them, said of one; null for any other.</summary>
    public static string? SortOf(string word) => ByWord.GetValueOrDefault(word);

    /// <summary>Whether a part of a kind's name, such as <c>hexbolt</c>, begins or ends with a word for a sort.</summary>
    public static bool Sounds(string part, string sort) => Rows.Any(row => row.Sort == sort && row.Words.Concat(row.OfKinds).Any(word =>
        part.StartsWith(word, StringComparison.OrdinalIgnoreCase) || part.EndsWith(word, StringComparison.OrdinalIgnoreCase)));
}
