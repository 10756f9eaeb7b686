using System.Globalization;
using System.Text;

namespace ProcScript.Cards.Escaping;

/// <summary>Plain text inside a quoted CSS string.</summary>
internal static class CssText
{
    /// <summary>
    /// Writes every character that is not a plain letter, digit or blank as an escape, so that no text can end the string
    /// or the style element around it.
    /// </summary>
    public static string Escape(string text)
    {
        StringBuilder escaped = new(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.IsAscii && (Rune.IsLetterOrDigit(rune) || rune.Value == ' '))
            {
                escaped.Append((char)rune.Value);
            }
            else
            {
                // The blank after the digits ends the escape.
                escaped.Append('\\').Append((rune.Value == 0 ? 0xFFFD : rune.Value).ToString("x", CultureInfo.InvariantCulture)).Append(' ');
            }
        }

        return escaped.ToString();
    }
}
