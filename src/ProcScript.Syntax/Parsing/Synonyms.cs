using System.Collections.Frozen;
using System.Collections.Immutable;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>What people of the trade write for a word of the language.</summary>
internal static class Synonyms
{
    private static readonly FrozenDictionary<string, ImmutableArray<int>> Words = new Dictionary<string, ImmutableArray<int>>(StringComparer.OrdinalIgnoreCase)
    {
        // Off.
        ["unscrew"] = [UNDO],
        ["unbolt"] = [UNDO],
        ["unfasten"] = [UNDO, RELEASE],
        ["slacken"] = [LOOSEN],
        ["unclip"] = [RELEASE],
        ["unsnap"] = [RELEASE],
        ["unhook"] = [RELEASE],
        ["unlatch"] = [RELEASE],
        ["pop"] = [RELEASE],
        ["detach"] = [REMOVE, DISCONNECT],
        ["dismount"] = [REMOVE],
        ["withdraw"] = [REMOVE],
        ["pull"] = [REMOVE, UNPLUG],
        ["lift"] = [REMOVE],
        ["slide"] = [REMOVE],
        ["drain"] = [EMPTY],
        ["deenergise"] = [ISOLATE],
        ["deenergize"] = [ISOLATE],
        ["prop"] = [SUPPORT],
        ["slit"] = [CUT],

        // On.
        ["install"] = [FIT],
        ["reinstall"] = [FIT],
        ["mount"] = [FIT],
        ["insert"] = [FIT],
        ["attach"] = [FIT, CONNECT],
        ["reconnect"] = [CONNECT],
        ["screw"] = [FASTEN, FASTENER],
        ["energise"] = [RESTORE],
        ["energize"] = [RESTORE],
        ["refill"] = [FILL],

        // Work.
        ["exchange"] = [REPLACE],
        ["swap"] = [REPLACE],
        ["change"] = [REPLACE],
        ["mend"] = [REPAIR],
        ["fix"] = [REPAIR],
        ["wipe"] = [CLEAN],
        ["examine"] = [INSPECT],
        ["throw"] = [DISCARD],

        // What a file is made of.
        ["import"] = [USE],
        ["include"] = [USE],
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

    /// <summary>Verbs of two words; the second is one of <see cref="Away"/> or <see cref="Back"/>.</summary>
    private static readonly FrozenSet<string> Takers = new[] { "take", "lift", "pull", "slide", "lever", "prise", "pry", "draw", "get" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> Putters = new[] { "put", "push", "place", "set" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> Away = new[] { "off", "out", "away" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> Back = new[] { "back", "in", "on" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> Switches = new[] { "switch", "turn" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether a word is one for a word or sign of the language.</summary>
    public static bool Means(ReadOnlySpan<char> word, int kind) =>
        Words.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(word, out var kinds) && kinds.Contains(kind);

    /// <summary>The verb that two words stand for; none where they stand for none.</summary>
    public static ImmutableArray<int> OfTwo(ReadOnlySpan<char> first, ReadOnlySpan<char> second)
    {
        if (Away.GetAlternateLookup<ReadOnlySpan<char>>().Contains(second))
        {
            return Takers.GetAlternateLookup<ReadOnlySpan<char>>().Contains(first) ? [REMOVE]
                : Switches.GetAlternateLookup<ReadOnlySpan<char>>().Contains(first) ? [ISOLATE]
                : first.Equals("screw", StringComparison.OrdinalIgnoreCase) ? [UNDO]
                : first.Equals("throw", StringComparison.OrdinalIgnoreCase) ? [DISCARD] : [];
        }

        return !Back.GetAlternateLookup<ReadOnlySpan<char>>().Contains(second) ? []
            : Putters.GetAlternateLookup<ReadOnlySpan<char>>().Contains(first) ? [FIT]
            : Switches.GetAlternateLookup<ReadOnlySpan<char>>().Contains(first) ? [RESTORE] : [];
    }
}
