using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace ProcScript.LanguageServer.Reference;

/// <summary>What the reference of the language says of a word. The page itself is what it is read from, so that there is one source.</summary>
internal static class LanguageReference
{
    private const string Name = "LANGUAGE.md";

    // A sentence with more pieces of code than that is a list of words, and tells little of each.
    private const int ListLength = 5;

    /// <summary>The whole page.</summary>
    public static string Text => ReadPage();

    private static readonly Lazy<ReferenceText> Read = new(static () => new ReferenceText(ReadPage()));
    private static readonly ConcurrentDictionary<string, ImmutableArray<ReferenceEntry>> Found = new(StringComparer.Ordinal);

    /// <summary>All that is said of a word, what tables say before what prose says; nothing for a word that the page has not.</summary>
    /// <param name="word">One word of the language, or a unit as it is written.</param>
    public static ImmutableArray<ReferenceEntry> Entries(string word) => Found.GetOrAdd(word, Find);

    /// <summary>What is said of a word where it stands; null for a word that the page has not.</summary>
    /// <param name="word">The word, with those that always follow it.</param>
    /// <param name="sorts">What the word may be there, the likeliest first.</param>
    public static ReferenceEntry? Of(string word, params ReadOnlySpan<string> sorts)
    {
        var entries = Entries(word.Split(' ')[0]);
        var exact = entries.Where(entry => word.Contains(' ', StringComparison.Ordinal) && entry.Usage.StartsWith(word, StringComparison.Ordinal)).ToImmutableArray();
        foreach (var sort in sorts)
        {
            if (exact.Concat(entries).FirstOrDefault(entry => entry.Sort == sort) is { } entry)
            {
                return entry;
            }
        }

        return exact.Concat(entries.OrderByDescending(entry => entry.Usage.StartsWith(word, StringComparison.Ordinal))).FirstOrDefault();
    }

    private static ImmutableArray<ReferenceEntry> Find(string word)
    {
        var read = Read.Value;
        var whole = new Regex($@"(?<![\p{{L}}\p{{N}}_]){Regex.Escape(word)}(?![\p{{L}}\p{{N}}_])", RegexOptions.CultureInvariant);
        var rows = read.Rows.Where(row => row.Keys[0] == word).Select(row => row.Entry);
        var others = read.Rows.Where(row => row.Keys[0] != word && row.Keys.Contains(word)).Select(row => row.Entry);
        var prose = read.Sentences
            .Select(sentence => (Sentence: sentence, Code: ReferenceText.CodeIn(sentence.Means).FirstOrDefault(code => whole.IsMatch(code))))
            .Where(one => one.Code is not null)
            .OrderBy(one => ReferenceText.CodeIn(one.Sentence.Means).Count() > ListLength)
            .ThenByDescending(one => one.Code!.StartsWith(word, StringComparison.Ordinal) && one.Code.Length > word.Length)
            .Select(one => one.Sentence with { Usage = one.Code! })
            .ToLookup(entry => entry.Usage.StartsWith(word + " ", StringComparison.Ordinal));
        var asides = read.Asides.Where(row => row.Keys.Contains(word)).Select(row => row.Entry);
        return [.. rows.Concat(prose[true]).Concat(others).Concat(prose[false]).Concat(asides).Select(entry => entry with { Example = Example(read, entry, whole) })];
    }

    /// <summary>A line with the word: of the same section where there is one, and one that begins with it.</summary>
    private static string Example(ReferenceText read, ReferenceEntry entry, Regex word) => read.Examples
        .Where(example => word.IsMatch(example.Bare))
        .OrderByDescending(example => IsAlike(example.Bare, entry.Usage, word))
        .ThenByDescending(example => example.Section == entry.Section)
        .ThenByDescending(example => word.Match(example.Words).Index == 0)
        .ThenBy(example => example.Words.Length)
        .Select(example => example.Words)
        .FirstOrDefault(entry.Usage);

    /// <summary>Whether a line uses the word as it is meant: with a text behind it or without, with the words that always follow it.</summary>
    private static bool IsAlike(string line, string usage, Regex word)
    {
        var (written, shown) = (word.Match(usage), word.Match(line));
        var behind = usage[(written.Index + written.Length)..].TrimStart();
        var found = line[(shown.Index + shown.Length)..].TrimStart();
        return usage.Contains(' ', StringComparison.Ordinal) && usage.All(letter => char.IsAsciiLetterLower(letter) || letter == ' ') && line.Contains(usage, StringComparison.Ordinal)
            || (behind.Length > 0 && found.Length > 0 && (behind[0] == '"') == (found[0] == '"') && char.IsAsciiDigit(behind[0]) == char.IsAsciiDigit(found[0]));
    }

    private static string ReadPage()
    {
        using var stream = typeof(LanguageReference).Assembly.GetManifestResourceStream(Name) ?? throw new InvalidOperationException($"{Name} is not part of the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
