using System.Collections.Immutable;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Syntax.Formatting;

/// <summary>The words and comments of a file, and what a layout has to know of each.</summary>
internal sealed class LayoutWords
{
    private readonly SourceText _text;
    private readonly ImmutableArray<LayoutWord> _words;

    private LayoutWords(SourceText text, ImmutableArray<LayoutWord> words)
    {
        _text = text;
        _words = words;
        NewLine = FirstLineBreak(text.Content);
    }

    /// <summary>How many there are.</summary>
    public int Count => _words.Length;

    /// <summary>The line break that the file has; its first, where it has several sorts.</summary>
    public string NewLine { get; }

    public LayoutWord this[int index] => _words[index];

    /// <summary>The words of a file without an error in its text.</summary>
    public static LayoutWords Of(SyntaxTree tree)
    {
        var places = WordPlaces.Of(tree.Root);
        var content = tree.Text.Content;
        var words = ImmutableArray.CreateBuilder<LayoutWord>();
        var breaks = 0;
        foreach (var (category, span) in tree.Tokens)
        {
            switch (category)
            {
                case TokenCategory.WhiteSpace:
                    break;
                case TokenCategory.LineBreak:
                    breaks++;
                    break;
                default:
                    words.Add(new LayoutWord(
                        new TextSpan(span.Start, content.AsSpan(span.Start, span.Length).TrimEnd().Length),
                        category,
                        category is TokenCategory.Punctuation && span.Length == 1 ? content[span.Start] : '\0',
                        breaks,
                        places.SentenceEnd(span.Start),
                        places.IsJoined(span.Start)));
                    breaks = 0;
                    break;
            }
        }

        return new LayoutWords(tree.Text, words.ToImmutable());
    }

    /// <summary>The blanks before a word; the last gap, behind all words, goes to the end of the file.</summary>
    public TextSpan Gap(int word) => TextSpan.FromBounds(
        word == 0 ? 0 : _words[word - 1].Span.End,
        word == Count ? _text.Content.Length : _words[word].Span.Start);

    /// <summary>The blank before a word that stands on the line of the one before it, in the same sentence.</summary>
    public string Blank(int word) => IsGlued(word) ? "" : " ";

    /// <summary>Whether a clause begins with the word: where a sentence is too long for a line, the next line may begin here.</summary>
    public bool BeginsClause(int word) => _words[word].Category == TokenCategory.Keyword && _text.Slice(_words[word].Span)
        is "needs" or "expect" or "before" or "after" or "at" or "to" or "on" or "carries" or "covered" or "behind" or "while" or "because";

    private bool IsGlued(int word)
    {
        var (before, here) = (this[word - 1], this[word]);
        if (here.Sign is ',' or '[' or ']' or '(' or ')' || before.Sign is '[' or '(')
        {
            return true;
        }

        // "1 3/8 in", "1/4-20 UNC" and "M8 LH": a word or a number right behind another is a thing of its own.
        return here.IsJoined && !(IsWordOrNumber(before) && IsWordOrNumber(here));
    }

    private static bool IsWordOrNumber(LayoutWord word) =>
        word.Category is TokenCategory.Number or TokenCategory.Name or TokenCategory.Keyword;

    private static string FirstLineBreak(string content)
    {
        var at = content.AsSpan().IndexOfAny('\r', '\n');
        return at < 0 || content[at] == '\n' ? "\n" : at + 1 < content.Length && content[at + 1] == '\n' ? "\r\n" : "\r";
    }
}

/// <summary>A word or a comment.</summary>
/// <param name="Span">Where it stands, without blanks at the end of a comment.</param>
/// <param name="Category">What sort of thing it is.</param>
/// <param name="Sign">The one character that it is; <c>\0</c> for all that is no sign.</param>
/// <param name="Breaks">How many line breaks stand before it.</param>
/// <param name="SentenceEnd">Where the largest sentence ends that begins with it; 0 where none does.</param>
/// <param name="IsJoined">Whether it belongs to the word before it.</param>
internal readonly record struct LayoutWord(
    TextSpan Span, TokenCategory Category, char Sign, int Breaks, int SentenceEnd, bool IsJoined)
{
    public bool IsComment => Category == TokenCategory.Comment;
}
