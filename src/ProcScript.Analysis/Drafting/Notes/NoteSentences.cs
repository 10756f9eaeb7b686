using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>Takes a line of notes apart into sentences that each ask for one thing.</summary>
internal static partial class NoteSentences
{
    /// <summary>The sentences, without words that only lead on.</summary>
    public static IEnumerable<string> Of(string line)
    {
        foreach (var sentence in SentenceEnd().Split(line).Select(sentence => sentence.Trim()).Where(sentence => sentence.Length > 0))
        {
            // What warns is read as a whole.
            if (Alert().IsMatch(sentence))
            {
                yield return sentence;
                continue;
            }

            var start = 0;
            var joints = Joint().Matches(sentence);
            for (var at = 0; at < joints.Count; at++)
            {
                // What follows an "and" is a step of its own only where it says what is to be done.
                var joint = joints[at];
                var end = at + 1 < joints.Count ? joints[at + 1].Index : sentence.Length;
                var next = sentence[Math.Min(joint.Index + joint.Length, end)..end];
                if (joint.Index > start && NoteVerbs.Of(Bare(next)) is { Act: not NoteAct.Wait })
                {
                    yield return Bare(sentence[start..joint.Index]);
                    start = joint.Index + joint.Length;
                }
            }

            yield return Bare(sentence[start..]);
        }
    }

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

    private static string Bare(string piece) => Lead().Replace(piece.Trim(' ', ','), "").Trim();

    [GeneratedRegex(@"(?<=[.!?])\s+(?=[A-Z(])|;\s*", RegexOptions.CultureInvariant)]
    private static partial Regex SentenceEnd();

    [GeneratedRegex(@"\s+(?:and then|then|and|&)\s+|,\s*(?:then|and)?\s*(?=[a-z])", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Joint();

    [GeneratedRegex(@"^(?:then|next|now|first|finally|also|please|and|carefully|gently|slowly|you can|you may)\b[,\s]*", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Lead();

    [GeneratedRegex(@"^(?:(?<word>danger|warning|caution|notice|note|nb)\s*[:!,-]+\s*|(?:careful|be careful|take care|mind|beware|watch|watch out|do not|don't|never)\b)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Alert();
}
