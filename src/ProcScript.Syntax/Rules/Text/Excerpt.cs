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
            if (char.IsControl(character) || char.IsSurrogate(character) || (char.IsWhiteSpace(character) && character != ' '))
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
}
