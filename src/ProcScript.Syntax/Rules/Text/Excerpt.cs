using System.Globalization;
using System.Text;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>Quotes a piece of the author's text in a message.</summary>
internal static class Excerpt
{
    private const int Longest = 40;

    /// <summary>The characters of a span between backticks, on one line and not too long.</summary>
    public static string Of(SourceText text, TextSpan span)
    {
        var shown = new StringBuilder("`");
        var end = Math.Min(span.End, span.Start + Longest);
        for (var i = span.Start; i < end; i++)
        {
            var character = text.Content[i];
            if (IsPair(text.Content, i, span.End))
            {
                shown.Append(text.Content, i, 2);
                i++;
            }
            else if (char.IsControl(character) || char.IsSurrogate(character) || (char.IsWhiteSpace(character) && character != ' '))
            {
                shown.Append(CultureInfo.InvariantCulture, $"U+{(int)character:X4}");
            }
            else
            {
                shown.Append(character);
            }
        }

        return shown.Append(span.Length > Longest ? "…`" : "`").ToString();
    }

    /// <summary>Whether two units make up one character that is seen: an emoji, a sign of another script.</summary>
    private static bool IsPair(string content, int at, int end) =>
        at + 1 < end && Rune.TryCreate(content[at], content[at + 1], out var rune)
        && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned);
}
