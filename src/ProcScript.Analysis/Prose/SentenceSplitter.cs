using System.Collections.Frozen;
using System.Collections.Immutable;

namespace ProcScript.Analysis.Prose;

/// <summary>
/// Divides Markdown into sentences: at a full stop, a question or an exclamation mark that a blank follows, and at the end of a
/// paragraph, a heading or an item of a list. The full stop of an abbreviation, of a number and of the mark of an item ends none.
/// </summary>
internal static class SentenceSplitter
{
    /// <summary>Abbreviations that something always follows.</summary>
    private static readonly FrozenSet<string> NeverLast = FrozenSet.ToFrozenSet(
        ["e.g", "i.e", "cf", "vs", "approx", "ca", "fig", "figs", "no", "nos", "dr", "mr", "mrs", "ms", "st", "incl", "resp", "dia", "eq", "sect", "vol"],
        StringComparer.OrdinalIgnoreCase);

    /// <summary>Abbreviations that may end a sentence: they do where the next word is written large.</summary>
    private static readonly FrozenSet<string> PerhapsLast = FrozenSet.ToFrozenSet(
        ["etc", "min", "max", "qty", "in", "ft", "lb", "oz", "hr", "sec", "temp", "ltd", "co", "inc"],
        StringComparer.OrdinalIgnoreCase);

    /// <summary>The sentences of a text.</summary>
    public static ImmutableArray<Sentence> Split(string text)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        var (paragraph, start, at) = (0, 0, 0);
        while (at < text.Length)
        {
            if (text[at] == '\n')
            {
                var next = EndOfBreak(text, at, out var isParagraph, out var isItem);
                if (isParagraph || isItem)
                {
                    Add(sentences, text, start, at, paragraph);
                    paragraph += isParagraph ? 1 : 0;
                    start = next;
                }

                at = next;
            }
            else if (EndsHere(text, start, at))
            {
                at = AfterClosing(text, at);
                Add(sentences, text, start, at, paragraph);
                start = at;
            }
            else
            {
                at++;
            }
        }

        Add(sentences, text, start, text.Length, paragraph);
        return sentences.ToImmutable();
    }

    private static void Add(ImmutableArray<Sentence>.Builder sentences, string text, int start, int end, int paragraph)
    {
        while (start < end && char.IsWhiteSpace(text[start]))
        {
            start++;
        }

        while (end > start && char.IsWhiteSpace(text[end - 1]))
        {
            end--;
        }

        start = AfterMark(text, start, end);
        if (WordSplitter.Split(text, start, end) is { IsEmpty: false } words)
        {
            sentences.Add(new Sentence(text, start, end, paragraph, words));
        }
    }

    /// <summary>The first character of the next line that is no blank, and whether an empty line or a new item lies between.</summary>
    private static int EndOfBreak(string text, int at, out bool isParagraph, out bool isItem)
    {
        var breaks = 0;
        while (at < text.Length && char.IsWhiteSpace(text[at]))
        {
            breaks += text[at] == '\n' ? 1 : 0;
            at++;
        }

        isParagraph = breaks > 1;
        isItem = AfterMark(text, at, text.Length) > at;
        return at;
    }

    /// <summary>What follows the mark of an item (<c>-</c>, <c>*</c>, <c>1.</c>), a heading or a quotation at the beginning of a line.</summary>
    private static int AfterMark(string text, int start, int end)
    {
        var at = start;
        while (at < end && (text[at] is '-' or '*' or '+' or '#' or '>' || char.IsAsciiDigit(text[at])))
        {
            at++;
        }

        if (at > start && at < end && char.IsAsciiDigit(text[at - 1]))
        {
            at = text[at] is '.' or ')' ? at + 1 : start;
        }

        if (at == start || at >= end || text[at] != ' ')
        {
            return start;
        }

        while (at < end && text[at] == ' ')
        {
            at++;
        }

        return at;
    }

    private static bool EndsHere(string text, int start, int at)
    {
        if (text[at] is not ('.' or '!' or '?' or '。' or '！' or '？'))
        {
            return false;
        }

        if (text[at] > 127)
        {
            return true;
        }

        var next = AfterClosing(text, at);
        if (next < text.Length && !char.IsWhiteSpace(text[next]))
        {
            return false;
        }

        if (text[at] != '.' || next == text.Length)
        {
            return true;
        }

        var before = at;
        while (before > start && !char.IsWhiteSpace(text[before - 1]) && text[before - 1] is not ('(' or '"'))
        {
            before--;
        }

        var word = text[before..at];
        return !(NeverLast.Contains(word) && !(word is "no" or "No" && !IsFollowedByDigit(text, next)))
            && !(PerhapsLast.Contains(word) && !IsFollowedByCapital(text, next))
            && !(word is [var letter] && char.IsLetter(letter) && letter != 'I')
            && !(text.AsSpan(start, before - start).IsWhiteSpace() && AfterMark(text, before, text.Length) > before);
    }

    /// <summary>The marks that close a quotation, a bracket or an emphasis belong to the sentence.</summary>
    private static int AfterClosing(string text, int at)
    {
        do
        {
            at++;
        }
        while (at < text.Length && text[at] is '.' or '!' or '?' or ')' or ']' or '"' or '\'' or '”' or '’' or '*' or '_' or '`');

        return at;
    }

    private static bool IsFollowedByDigit(string text, int at) => NextVisible(text, at) is { } next && char.IsAsciiDigit(next);

    private static bool IsFollowedByCapital(string text, int at) => NextVisible(text, at) is { } next && char.IsUpper(next);

    private static char? NextVisible(string text, int at)
    {
        while (at < text.Length && char.IsWhiteSpace(text[at]))
        {
            at++;
        }

        return at < text.Length ? text[at] : null;
    }
}
