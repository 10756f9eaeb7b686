using System.Collections.Frozen;
using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>Takes a line of notes apart into sentences that each ask for one thing.</summary>
internal static partial class NoteSentences
{
    // "Using a 10 mm socket on a long extension undo …"
    private const int MostBefore = 10;
    private const int MostWordsOfHardware = 4;

    private static readonly FrozenSet<string> Fronts = new[] { "using", "with", "from", "through", "working" }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>The sentences, what warns before what it warns of; words that only lead on are left out of the text, and kept in what was said.</summary>
    public static IEnumerable<(string Text, string Said)> Of(string line)
    {
        foreach (var sentence in SentenceEnd().Split(With().Replace(line, "with ")).Select(sentence => sentence.Trim()).Where(sentence => sentence.Length > 0))
        {
            // What warns is read as a whole.
            if (Alert().IsMatch(sentence))
            {
                yield return (sentence, sentence);
                continue;
            }

            var rest = sentence;
            foreach (var inside in new[] { SignalInside().Match(rest), CareInside().Match(rest) }.Where(match => match.Success && match.Groups["text"].Value.Any(char.IsLetter)))
            {
                var alert = $"{(inside.Groups["word"].Success ? inside.Groups["word"].Value + ": " : "")}{inside.Groups["text"].Value.Trim()}";
                yield return (alert, alert);
                rest = rest.Replace(inside.Value, " ", StringComparison.Ordinal).Trim();
            }

            foreach (var piece in Pieces(rest))
            {
                yield return (Bare(piece), piece.Trim(' ', ','));
            }
        }
    }

    private static IEnumerable<string> Pieces(string sentence)
    {
        var (start, shared) = (0, "");
        var joints = Joint().Matches(sentence);
        for (var at = 0; at < joints.Count; at++)
        {
            // What follows an "and" is a step of its own only where it says what is to be done.
            var joint = joints[at];
            var end = at + 1 < joints.Count ? joints[at + 1].Index : sentence.Length;
            var next = sentence[Math.Min(joint.Index + joint.Length, end)..end];
            var before = sentence[start..joint.Index];
            if (joint.Index <= start || IsFront(before))
            {
                continue;
            }

            if (NoteVerbs.Of(Bare(next)) is { Act: not NoteAct.Wait })
            {
                yield return shared + before;
                (start, shared) = (joint.Index + joint.Length, "");
            }
            else if (Shared(shared + before, next) is { } verb)
            {
                // "Remove the split pin then the nut" takes off both.
                yield return shared + before;
                (start, shared) = (joint.Index + joint.Length, verb);
            }
        }

        yield return shared + sentence[start..];
    }

    /// <summary>Whether a piece only says with what, or from where: it belongs to what follows.</summary>
    private static bool IsFront(string piece) =>
        Bare(piece) is var bare && (bare.Length == 0 || (Fronts.Contains(bare.Split(' ')[0]) && NoteVerbs.Of(bare) is null && bare.Split(' ').Length < MostBefore));

    /// <summary>The verb of a piece, where what follows is hardware too and has none of its own; empty where neither has one; null where they are one.</summary>
    private static string? Shared(string piece, string next)
    {
        var bare = Bare(piece);
        var said = NoteVerbs.Of(bare);
        if (said is { Act: not (NoteAct.Remove or NoteAct.Undo or NoteAct.Release or NoteAct.Unplug or NoteAct.Disconnect or NoteAct.Cut) }
            || !IsHardware(said?.Object ?? bare) || !IsHardware(next))
        {
            return null;
        }

        return said is var (_, rest) ? bare.EndsWith(rest, StringComparison.Ordinal) ? bare[..^rest.Length] : null : "";
    }

    private static bool IsHardware(string words) =>
        NoteObject.Read(NoteFigures.Of(words).Rest) is { Sort: { } sort, Words: var thing } && ItemSorts.IsJoint(sort) && thing.Split(' ').Length <= MostWordsOfHardware;

    /// <summary>The signal word of a sentence that warns, with its text and whether the word is a guess; null for any other.</summary>
    public static (string Word, string Text, bool IsGuess)? Warning(string sentence)
    {
        var match = Alert().Match(sentence);
        if (!match.Success)
        {
            return null;
        }

        var said = match.Groups["word"].Value.ToLowerInvariant();
        var text = sentence[match.Length..].Trim(' ', ':', '-', '!', ',');
        return said.Length > 0 && text.Length > 0 ? (said is "note" or "nb" ? "notice" : said, text, false)
            : ("caution", sentence, true);
    }

    /// <summary>Without words that only lead on; what a sentence begins with, such as the tool, stands behind the verb.</summary>
    private static string Bare(string piece)
    {
        var bare = Lead().Replace(piece.Trim(' ', ','), "").Trim();
        var words = bare.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length < 4 || !Fronts.Contains(words[0]))
        {
            return bare;
        }

        for (var at = 2; at < Math.Min(words.Length - 1, MostBefore); at++)
        {
            var verb = string.Join(' ', words[at..]);
            if (NoteVerbs.Of(verb) is not null)
            {
                return $"{verb.TrimEnd('.')} {char.ToLowerInvariant(words[0][0])}{string.Join(' ', words[..at]).TrimEnd(',', ':')[1..]}";
            }
        }

        return bare;
    }

    [GeneratedRegex(@"(?<!(?<!\p{L})(?:no|nr|approx|abt|qty|incl|max|min|fig|pos|ref|e\.g|i\.e)\.)(?<=[.!?])\s+(?=[A-Z(])|;\s*", RegexOptions.CultureInvariant)]
    private static partial Regex SentenceEnd();

    [GeneratedRegex(@"\s+(?:and then|then|and|&|\+)\s+|,\s*(?:then|and)?\s*(?=[a-z(\d])", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Joint();

    [GeneratedRegex(@"\bw/\s*", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex With();

    [GeneratedRegex(@"\s*[(,;–—-]?\s*\b(?<word>DANGER|WARNING|CAUTION|NOTICE|NOTE|NB)\b[\s:!,–—-]*(?<text>[^)]+)\)?\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex SignalInside();

    [GeneratedRegex(@"\s*\((?<text>(?:careful|be careful|take care|mind|beware|watch|do not|don't|never)\b[^)]*)\)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex CareInside();

    [GeneratedRegex(@"^(?:(?:then|next|now|first|finally|also|please|and|carefully|gently|slowly|you can|you may)\b[,\s]*)+", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Lead();

    [GeneratedRegex(@"^(?:(?<word>danger|warning|caution|notice|note|nb)\s*[:!,-]+\s*|(?-i:(?<word>NB|WARNING|DANGER|CAUTION)\b)\s*|(?:careful|be careful|take care|mind|beware|watch|watch out|do not|don't|never)\b)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Alert();
}
