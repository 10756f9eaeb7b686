using System.Collections.Immutable;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Prose;

/// <summary>
/// Divides a sentence into words as simplified technical English counts them (ASD-STE100, section 8; from memory): a word with hyphens, an
/// abbreviation, and a number with its unit are one each. A variable in braces is one, a web address behind a link none.
/// </summary>
internal static class WordSplitter
{
    /// <summary>The words between two places of a text.</summary>
    public static ImmutableArray<Word> Split(string text, int start, int end)
    {
        var words = ImmutableArray.CreateBuilder<Word>();
        for (var at = start; at < end;)
        {
            if (IsBlank(text[at]))
            {
                at++;
                continue;
            }

            var from = at;
            while (at < end && !IsBlank(text[at]))
            {
                // What a link points to is not read.
                at = text[at] == ']' && at + 1 < end && text[at + 1] == '(' && text.IndexOf(')', at, end - at) is > 0 and var close
                    ? close + 1
                    : at + 1;
            }

            Add(words, text, from, at);
        }

        return words.ToImmutable();
    }

    private static void Add(ImmutableArray<Word>.Builder words, string text, int start, int end)
    {
        if (text.IndexOf("](", start, end - start, StringComparison.Ordinal) is >= 0 and var link)
        {
            end = link;
        }

        var (from, to) = (start, end);
        while (from < to && !IsOfWord(text[from]))
        {
            from++;
        }

        while (to > from && !IsOfWord(text[to - 1]))
        {
            to--;
        }

        if (from == to)
        {
            return;
        }

        var word = text[from..to];
        var isUnit = words is [.., var number]
            && IsNumber(number.Text)
            && Units.Find(word) is not null
            && text.AsSpan(number.End, from - number.End).Trim(' ').IsEmpty;
        if (isUnit)
        {
            var last = words[^1];
            words[^1] = new Word(text[last.Start..to], last.Start, to);
        }
        else
        {
            words.Add(new Word(word, from, to));
        }
    }

    private static bool IsBlank(char c) => char.IsWhiteSpace(c) || c is '—' or '…';

    private static bool IsOfWord(char c) => char.IsLetterOrDigit(c) || c is '{' or '}' or '°' or '%' or 'µ';

    private static bool IsNumber(string word)
    {
        foreach (var c in word)
        {
            if (!char.IsAsciiDigit(c) && c is not ('.' or ',' or '/' or '-' or '–'))
            {
                return false;
            }
        }

        return true;
    }
}
