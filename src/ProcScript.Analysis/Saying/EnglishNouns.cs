using System.Collections.Frozen;
using ProcScript.Analysis.Prose;

namespace ProcScript.Analysis.Saying;

/// <summary>Where an English name begins and ends, by the words around it: no grammar, only words that leave no doubt.</summary>
internal static class EnglishNouns
{
    private static readonly FrozenSet<string> Before = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase, "the", "a", "an", "this", "that", "both", "its", "your", "each", "every", "all", "no");

    private static readonly FrozenSet<string> Behind = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase,
        "is", "are", "was", "stands", "stand", "sits", "sit", "lies", "lie", "hangs", "hang", "must", "can", "may", "has", "have", "does", "do", "moves",
        "turns", "runs", "reads", "shows", "stays", "stay", "rests", "holds", "touches", "at", "on", "in", "with", "to", "and", "or", "by", "for", "from",
        "as", "so", "that", "which", "where", "while", "behind", "under", "over", "above", "below", "against", "into", "onto", "through", "along", "round",
        "around", "beside", "between", "near", "by", "upwards", "downwards", "upright", "up", "down", "then", "again", "first", "last", "only", "of", "without",
        "within", "inside", "towards", "past", "across", "until", "before", "after", "once", "when", "if", "free", "clear", "tight", "lightly", "firmly", "slowly");

    /// <summary>Whether a name can begin with a word: an article or a sign before it, or nothing.</summary>
    public static bool BeginsAt(Sentence sentence, int word) =>
        word == 0 || Before.Contains(sentence.Words[word - 1].Text) || sentence.Before(word).ContainsAny(',', ';', ':');

    /// <summary>Whether a name can end before a word: it ends the sentence, or a sign or a word follows that is no noun.</summary>
    public static bool EndsAt(Sentence sentence, int word) =>
        word >= sentence.Words.Length || sentence.Before(word).ContainsAny([',', ';', ':', '.', '(', ')']) || Behind.Contains(sentence.Words[word].Text);
}
