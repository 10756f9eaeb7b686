using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>Guesses what was meant where a line holds an odd number of quotes.</summary>
internal static class LoneQuotes
{
    /// <summary>Where a text that ran on too far should have ended, or 0 where nothing tells.</summary>
    /// <param name="content">The whole text.</param>
    /// <param name="quoted">The text as read, from its quote to the next, or to the end of its line.</param>
    public static int LikelyEnd(string content, TextSpan quoted)
    {
        if (IsClosing(content, quoted.Start))
        {
            return quoted.Start + 1;
        }

        if (BlockBrace(content, quoted) is var brace and > 0)
        {
            return brace;
        }

        return quoted.Length > 1 && content[quoted.End - 1] == '"' && IsOpening(content, quoted.End - 1) ? LastWord(content, quoted) : 0;
    }

    /// <summary>Whether a quote stands where a text ends: right behind a word, with nothing right behind it.</summary>
    public static bool IsClosing(string content, int quote) =>
        quote > 0 && !char.IsWhiteSpace(content[quote - 1]) && (quote + 1 == content.Length || char.IsWhiteSpace(content[quote + 1]));

    private static bool IsOpening(string content, int quote) =>
        quote > 0 && char.IsWhiteSpace(content[quote - 1]) && quote + 1 < content.Length && !char.IsWhiteSpace(content[quote + 1]);

    // A brace alone between blanks is one of a block: those of a variable enclose its name.
    private static int BlockBrace(string content, TextSpan quoted)
    {
        for (var i = quoted.Start + 1; i < quoted.End; i++)
        {
            if (content[i] is '{' or '}' && content[i - 1] is ' ' or '\t'
                && (i + 1 == quoted.End || content[i + 1] is ' ' or '\t' or '{' or '}'))
            {
                return i;
            }
        }

        return 0;
    }

    // The word before an opening quote belongs to the text that it opens.
    private static int LastWord(string content, TextSpan quoted)
    {
        var start = quoted.End - 1;
        while (start > quoted.Start + 1 && char.IsWhiteSpace(content[start - 1]))
        {
            start--;
        }

        while (start > quoted.Start + 1 && !char.IsWhiteSpace(content[start - 1]))
        {
            start--;
        }

        return start;
    }
}
