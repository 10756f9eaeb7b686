namespace ProcScript.Syntax.Parsing;

/// <summary>Tells a slip of the fingers from another word.</summary>
internal static class Spelling
{
    private const int LongestWord = 16;

    /// <summary>Whether a word is a keyword but for its case and a letter or two: left out, put in, mistaken or swapped.</summary>
    public static bool IsNear(ReadOnlySpan<char> word, string keyword)
    {
        if (word.Length < 2 || word.Length > LongestWord || !char.IsAsciiLetter(keyword[0]))
        {
            return false;
        }

        // A short word with two letters changed is another word.
        var allowed = Math.Min(word.Length, keyword.Length) <= 4 ? 1 : 2;
        return Math.Abs(word.Length - keyword.Length) <= allowed && Distance(word, keyword) <= allowed;
    }

    private static int Distance(ReadOnlySpan<char> word, string keyword)
    {
        Span<int> beforeLast = stackalloc int[LongestWord + 4];
        Span<int> last = stackalloc int[LongestWord + 4];
        Span<int> row = stackalloc int[LongestWord + 4];
        for (var j = 0; j <= keyword.Length; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= word.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= keyword.Length; j++)
            {
                var cost = Letter(word, i) == keyword[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1], last[j]) + 1, last[j - 1] + cost);
                if (i > 1 && j > 1 && Letter(word, i) == keyword[j - 2] && Letter(word, i - 1) == keyword[j - 1])
                {
                    row[j] = Math.Min(row[j], beforeLast[j - 2] + 1);
                }
            }

            last.CopyTo(beforeLast);
            row.CopyTo(last);
        }

        return last[keyword.Length];
    }

    private static char Letter(ReadOnlySpan<char> word, int i) => char.ToLowerInvariant(word[i - 1]);
}
