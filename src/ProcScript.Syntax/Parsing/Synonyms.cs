using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>What people of the trade write for a word of the language: for a verb what <see cref="TradeVerbs"/> has, for others what stands here.</summary>
internal static class Synonyms
{
    private static readonly FrozenDictionary<string, ImmutableArray<int>> Words = new Dictionary<string, ImmutableArray<int>>(StringComparer.OrdinalIgnoreCase)
    {
        // What a file is made of.
        ["import"] = [USE],
        ["include"] = [USE],
        ["screw"] = [FASTENER],
        ["bolt"] = [FASTENER],
        ["nut"] = [FASTENER],
        ["stud"] = [FASTENER],
        ["pipe"] = [LINE],
        ["hose"] = [LINE],
        ["component"] = [PART],
        ["assembly"] = [PART],
        ["job"] = [PROCEDURE],
        ["step"] = [STAGE],
        ["section"] = [STAGE],
        ["phase"] = [STAGE],
        ["fixed"] = [HELD],
        ["fastened"] = [HELD],
        ["secured"] = [HELD],
        ["bolted"] = [HELD],
        ["screwed"] = [HELD],
        ["plugged"] = [WIRED],
        ["connected"] = [WIRED, PIPED],
        ["weight"] = [MASS],
        ["weighs"] = [MASS],
        ["called"] = [AS],
        ["named"] = [AS],
        ["with"] = [BY],
        ["using"] = [WITH],
        ["under"] = [BEHIND],
        ["below"] = [BEHIND],
        ["for"] = [EACH],
        ["foreach"] = [EACH],
        ["if"] = [WHEN],
        ["unless"] = [WHEN],
        ["until"] = [BEFORE],
        ["since"] = [BECAUSE],
        ["and"] = [COMMA],

        // Signs.
        ["-"] = [RANGE],
        ["\u2212"] = [RANGE],
        ["to"] = [RANGE],
        ["("] = [LEFT_BRACKET],
        [")"] = [RIGHT_BRACKET],
        ["["] = [LEFT_PAREN],
        ["]"] = [RIGHT_PAREN],
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenDictionary<string, int> Verbs = FrozenDictionary.ToFrozenDictionary(
        from kind in Enumerable.Range(1, _ATN.maxTokenType)
        let word = TokenNames.Literal(kind)
        where word is not null
        group kind by word into kinds
        select KeyValuePair.Create(kinds.Key, kinds.First()),
        StringComparer.Ordinal);

    /// <summary>Whether a word is one for a word or sign of the language.</summary>
    public static bool Means(ReadOnlySpan<char> word, int kind) =>
        (Words.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(word, out var kinds) && kinds.Contains(kind))
        || (TokenNames.Literal(kind) is { } literal && TradeVerbs.Of(word).Contains(literal));

    /// <summary>The verbs that two words stand for; none where they stand for none.</summary>
    public static IEnumerable<int> OfTwo(ReadOnlySpan<char> first, ReadOnlySpan<char> second) => TradeVerbs.Of($"{first} {second}").Select(verb => Verbs[verb]);
}
