using System.Collections.Frozen;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Prose;

namespace ProcScript.Analysis.Saying;

/// <summary>Numbers of pieces that are written in English words: <c>the front four</c>, <c>two front and two rear</c>.</summary>
internal static partial class SpokenCounts
{
    private static readonly FrozenDictionary<string, int> Numbers = new[]
    {
        "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    }.Index().ToFrozenDictionary(number => number.Item, number => number.Index + 1, StringComparer.OrdinalIgnoreCase);

    /// <summary>What may stand behind a number of pieces; behind the number of something else stands what that is.</summary>
    private static readonly FrozenSet<string> Pieces = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase,
        "front", "rear", "left", "right", "upper", "lower", "top", "bottom", "inner", "outer", "long", "short", "middle", "port", "starboard", "in", "at", "on",
        "of", "below", "above", "behind", "under", "and", "bolts", "screws", "nuts", "clips", "pins", "studs", "plugs", "caps", "bolt", "screw", "nut", "clip", "pin",
        "carry", "hold", "sit");

    /// <summary>Whether a text may hold one, which most do not.</summary>
    public static bool AnyIn(string text) => Number().IsMatch(text);

    /// <summary>Whether the numbers of a sentence are about pieces and none of them, nor their sum, is a count.</summary>
    public static bool IsAgainst(Sentence sentence, int count)
    {
        var said = sentence.Words.Index().Where(word => Numbers.ContainsKey(word.Item.Text) && IsOfPieces(sentence, word.Index)).Select(word => Numbers[word.Item.Text]).ToList();
        return said.Count > 0 && (InPart().IsMatch(sentence.ToString()) ? said.TrueForAll(number => number > count) : !said.Contains(count) && said.Sum() != count);
    }

    private static bool IsOfPieces(Sentence sentence, int word) =>
        word + 1 >= sentence.Words.Length || sentence.Before(word + 1).ContainsAny([',', ';', ':', '.', ')']) || Pieces.Contains(sentence.Words[word + 1].Text);

    [GeneratedRegex(@"\b(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    [GeneratedRegex(@"\b(first|then|last|next|others?|rest|remaining|leave|each|every|either|per|both|one by one|one after|time|turns?|by one|from)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex InPart();
}
