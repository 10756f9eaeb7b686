using System.Buffers;
using System.Globalization;
using System.Text;
using Spectre.Console;

namespace ProcScript.Cli.Output;

/// <summary>
/// Makes text from a file fit for a terminal: no control character reaches it, none turns the reading direction, and every
/// character has a known width.
/// </summary>
internal static class PrintableText
{
    // Those of C0 but the tab, delete, and those of C1.
    private static readonly SearchValues<char> Controls =
        SearchValues.Create([.. Enumerable.Range(0, 0xA0).Where(code => code is < 0x20 or >= 0x7F).Select(code => (char)code)]);

    private const int TabWidth = 4;
    private const char Replacement = '\uFFFD';

    /// <summary>The text with everything a terminal would obey replaced by a picture of it; tabs become blanks.</summary>
    public static string Of(string text) => text.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0 ? text : Of(text.AsSpan());

    /// <summary>A text that is most likely printable already: one without a control character stays as it is.</summary>
    public static string Plain(string text) => text.AsSpan().IndexOfAny(Controls) < 0 ? text : Of(text.AsSpan());

    /// <inheritdoc cref="Of(string)"/>
    public static string Of(ReadOnlySpan<char> text)
    {
        var printable = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            Append(printable, rune);
        }

        return printable.ToString();
    }

    /// <summary>How many cells of a terminal it takes; the text must be printable.</summary>
    public static int WidthOf(string printable) => printable.GetCellWidth();

    /// <summary>How many code units the first character as a reader sees it takes, with what combines with it.</summary>
    public static int FirstCharacterLength(ReadOnlySpan<char> text) => StringInfo.GetNextTextElementLength(text);

    private static void Append(StringBuilder printable, Rune rune)
    {
        switch (rune.Value)
        {
            case '\t':
                printable.Append(' ', TabWidth);
                break;
            case < 0x20:
                // The control pictures stand in the order of the characters they picture.
                printable.Append((char)(0x2400 + rune.Value));
                break;
            case 0x7F:
                printable.Append('\u2421');
                break;
            case >= 0x80 and < 0xA0 or 0x061C or 0x200E or 0x200F or 0x2028 or 0x2029 or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069):
                printable.Append(Replacement);
                break;
            default:
                printable.Append(rune.ToString());
                break;
        }
    }
}
