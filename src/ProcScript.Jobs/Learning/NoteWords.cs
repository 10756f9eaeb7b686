using System.Collections.Frozen;
using System.Text;

namespace ProcScript.Jobs.Learning;

/// <summary>
/// Whether two notes say the same. Case, signs and the order of words do not matter; two thirds of all words that the two have between them must be
/// in both. Where only one has a number, or a word that denies, they say something else.
/// </summary>
internal static class NoteWords
{
    private const double SharedWords = 2.0 / 3;

    /// <summary>The words that turn a note into its opposite, in the languages that packs are printed in.</summary>
    private static readonly FrozenSet<string> Denials = FrozenSet.Create(
        StringComparer.Ordinal,
        "no", "not", "never", "without", "cannot", "nicht", "kein", "keine", "nie", "ohne", "ne", "pas", "jamais", "sans", "nunca", "sin", "bez", "nigdy");

    /// <summary>The words of a note, in lower case, each once.</summary>
    public static FrozenSet<string> Of(string text)
    {
        var words = new HashSet<string>(StringComparer.Ordinal);
        var word = new StringBuilder();
        foreach (var letter in text.Append(' '))
        {
            if (char.IsLetterOrDigit(letter))
            {
                word.Append(char.ToLowerInvariant(letter));
            }
            else if (letter is not '\'' and not '’' && word.Length > 0)
            {
                words.Add(word.ToString());
                word.Clear();
            }
        }

        return words.ToFrozenSet(StringComparer.Ordinal);
    }

    /// <summary>Whether two notes say the same, by their words.</summary>
    public static bool AreAlike(FrozenSet<string> one, FrozenSet<string> other)
    {
        var all = one.Union(other).ToList();
        var shared = all.Count(word => one.Contains(word) && other.Contains(word));
        return shared > 0 && shared >= SharedWords * all.Count && !all.Any(word => one.Contains(word) != other.Contains(word) && IsDecisive(word));
    }

    /// <summary>Puts together what says the same: what is alike, and what is alike to that.</summary>
    /// <param name="told">What was told.</param>
    /// <param name="text">Its words.</param>
    public static IEnumerable<List<T>> Group<T>(IEnumerable<T> told, Func<T, string> text)
    {
        var groups = new List<(List<FrozenSet<string>> Words, List<T> Told)>();
        foreach (var one in told)
        {
            var words = Of(text(one));
            var alike = groups.Where(group => group.Words.Exists(other => AreAlike(words, other))).ToList();
            var joined = (Words: alike.SelectMany(group => group.Words).Append(words).ToList(), Told: alike.SelectMany(group => group.Told).Append(one).ToList());
            groups.RemoveAll(alike.Contains);
            groups.Add(joined);
        }

        return groups.Select(group => group.Told);
    }

    /// <summary>The wording that most used, of several the shortest.</summary>
    public static string Typical(IEnumerable<string> texts) => texts.Select(text => text.Trim())
        .GroupBy(text => text, StringComparer.Ordinal)
        .OrderByDescending(same => same.Count()).ThenBy(same => same.Key.Length).ThenBy(same => same.Key, StringComparer.Ordinal)
        .First().Key;

    private static bool IsDecisive(string word) => Denials.Contains(word) || word.Any(char.IsDigit);
}
