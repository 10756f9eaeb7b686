using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>The verbs that mechanics write, and what they ask for.</summary>
internal static partial class NoteVerbs
{
    /// <summary>What notes ask for besides, which is no verb of the language.</summary>
    private static readonly ImmutableArray<(string Words, NoteAct Act)> Others =
    [
        .. Rows(NoteAct.PutBack, "torque", "reverse", "refitting", "reassembly", "assembly", "installation", "rebuild", "put it back", "put it all back", "put all back"),
        .. Rows(NoteAct.Wait, "wait", "let it", "leave it", "allow"),
        .. Rows(
            NoteAct.Tend,
            "note", "mark", "label", "photograph", "take a photo", "take photos", "take a picture", "chock", "catch", "protect", "mask", "tape up", "bend back", "tap", "clamp", "bleed"),
        .. Rows(NoteAct.Unlock, "press", "squeeze", "squeeze together", "slide", "slide back", "pull back", "flip", "flip back", "unlock", "push in", "pinch", "depress"),
    ];

    private static readonly ImmutableArray<(string Words, NoteAct Act)> Table =
    [
        .. Others
            .Concat(NoteActs.OfVerbs.Select(verb => (verb.Verb, verb.Act)))
            .Concat(TradeVerbs.All.Where(IsOfNotes).Select(row => (row.Phrase, NoteActs.Of(row.Verb)!.Value)))
            .DistinctBy(row => row.Item1)
            .OrderByDescending(row => row.Item1.Length),
    ];

    private static readonly FrozenSet<string> Links = new[]
    {
        "at", "with", "using", "from", "of", "to", "on", "in", "by", "and", "then", "through", "thru", "via", "for", "after", "before", "while", "when", "towards", "away", "carefully",
        "gently", "slowly", "together", "complete", "c/w", "until", "under", "behind", "inside", "over", "past", "upwards", "downwards", "forwards", "backwards", "sideways", "first", "-", "–",
        "—", "&", "as",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>The words that a verb begins with.</summary>
    public static IEnumerable<string> FirstWords => Table.Select(row => row.Words.Split(' ')[0]);

    // Between the two words of a verb stands the thing, and no more.
    private const int MostWordsBetween = 6;

    /// <summary>The verb that a sentence begins with, the longest that fits, and what stands behind it; null where it begins with none.</summary>
    public static (NoteAct Act, string Object)? Of(string sentence) =>
        Leading(sentence, words => words.Contains(' ', StringComparison.Ordinal)) ?? Parted(sentence) ?? Leading(sentence, words => !words.Contains(' ', StringComparison.Ordinal));

    /// <summary>What a sentence without a verb asks for by its last word, <c>lid off</c>, and what that is done to; null where it has no such word.</summary>
    public static (NoteAct Act, string Object)? Trailing(string sentence)
    {
        var words = sentence.TrimEnd('.', '!').Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length is < 2 or > MostWordsBetween ? null : words[^1].ToLowerInvariant() switch
        {
            "off" when Supply().IsMatch(sentence) => (NoteAct.Isolate, string.Join(' ', words[..^1])),
            "off" or "out" => (NoteAct.Remove, string.Join(' ', words[..^1])),
            "in" or "on" or "back" => (NoteAct.PutBack, string.Join(' ', words[..^1])),
            _ => null,
        };
    }

    private static (NoteAct Act, string Object)? Leading(string sentence, Func<string, bool> isMeant)
    {
        foreach (var (words, act) in Table)
        {
            if (isMeant(words) && sentence.StartsWith(words, StringComparison.OrdinalIgnoreCase) && (sentence.Length == words.Length || !char.IsLetterOrDigit(sentence[words.Length])))
            {
                return (act, sentence[words.Length..].Trim());
            }
        }

        return null;
    }

    /// <summary>Verbs of which the second word stands behind the thing: <c>take the guard off</c>, <c>switch the machine off at the wall</c>.</summary>
    private static (NoteAct Act, string Object)? Parted(string sentence)
    {
        var words = sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        foreach (var (phrase, act) in Table)
        {
            if (phrase.Split(' ') is not [var verb, var second] || words.Length < 3 || !words[0].Equals(verb, StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            var at = Array.FindIndex(words, 1, word => word.TrimEnd('.', '!', ',', ';').Equals(second, StringComparison.OrdinalIgnoreCase));
            if (at is > 1 and <= MostWordsBetween + 1)
            {
                // "Pull the spades off the switch" says where they are.
                var end = words[at].Length > second.Length ? "," : "";
                var link = end.Length == 0 && second is "off" or "out" && at < words.Length - 1 && !Links.Contains(words[at + 1]) ? " from" : end;
                return (act, string.Join(' ', words[1..at].Concat(words[(at + 1)..]).Select((word, index) => index == at - 2 && at < words.Length - 1 ? word + link : word)));
            }
        }

        return null;
    }

    [GeneratedRegex(@"^(?:the\s+)?(?:main\s+)?(?:power|pwr|mains|electrics|electricity|supply|air|gas|water)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Supply();

    // In notes "put it on the bench" and "push it in" put nothing back.
    private static bool IsOfNotes((string Phrase, string Verb) row) =>
        NoteActs.Of(row.Verb) is not null && !(row.Verb == "fit" && row.Phrase.Split(' ') is [_, "in" or "on"]);

    private static IEnumerable<(string Words, NoteAct Act)> Rows(NoteAct act, params ReadOnlySpan<string> phrases) =>
        phrases.ToArray().Select(phrase => (phrase, act));
}
