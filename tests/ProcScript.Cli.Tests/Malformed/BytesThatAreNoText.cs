using System.Text;

namespace ProcScript.Cli.Tests.Malformed;

/// <summary>Files that are not what a text file should be, byte by byte.</summary>
internal static class BytesThatAreNoText
{
    private static readonly byte[] Text = Encoding.UTF8.GetBytes(Sample.Text);

    public static IEnumerable<MalformedInput> All =>
    [
        MalformedInput.Fine("an empty file", ""),
        MalformedInput.Fine("only the mark before a text", Encoding.UTF8.Preamble.ToArray()),
        MalformedInput.Fine("a mark before the text", [.. Encoding.UTF8.Preamble, .. Text]),
        MalformedInput.Fine("only blank lines", "\n\r\n \t \n"),
        MalformedInput.Fine("only a comment without a line end", "// nothing here"),
        MalformedInput.Fine("lines ended as on Windows", Sample.Text.ReplaceLineEndings("\r\n")),
        MalformedInput.Fine("lines ended as on an old Mac", Sample.Text.ReplaceLineEndings("\r")),
        MalformedInput.Fine("no line end at the end", Sample.Text.TrimEnd()),
        MalformedInput.Fine("form feeds and non-breaking blanks", Sample.Text.Replace("{ ", "\f{\u00A0\f", StringComparison.Ordinal).Replace(" ", "\u00A0", StringComparison.Ordinal)),
        MalformedInput.Wrong("form feeds in texts", Sample.Text.Replace(" ", "\f", StringComparison.Ordinal)),
        MalformedInput.Wrong("a NUL at the end", Sample.Text + "\0"),
        MalformedInput.Wrong("NULs between the letters", string.Join('\0', Sample.Text.AsEnumerable())),
        MalformedInput.Wrong("nothing but NULs", new byte[65_536]),
        MalformedInput.Unreadable("a picture", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 0x0D, 0x49, 0x48, 0x44, 0x52]),
        MalformedInput.Wrong("a program", [0x7F, 0x45, 0x4C, 0x46, 2, 1, 1, .. new byte[100]]),
        MalformedInput.Unreadable("every byte there is", [.. Enumerable.Range(0, 4096).Select(i => (byte)(i * 167))]),
        MalformedInput.Unreadable("UTF-16 with a mark", [.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes(Sample.Text)]),
        MalformedInput.Unreadable("UTF-16 the other way round", [.. Encoding.BigEndianUnicode.Preamble, .. Encoding.BigEndianUnicode.GetBytes(Sample.Text)]),
        MalformedInput.Unreadable("UTF-16 without a mark", Encoding.Unicode.GetBytes(Sample.Text)),
        MalformedInput.Unreadable("Latin-1", Encoding.Latin1.GetBytes(Sample.Text)),
        MalformedInput.Unreadable("half a character at the end", [.. Text, 0xE2, 0x82]),
        MalformedInput.Unreadable("an overlong slash", [.. "// "u8, 0xC0, 0xAF]),
        MalformedInput.Unreadable("an unpaired surrogate", [.. "// "u8, 0xED, 0xA0, 0x80]),
        MalformedInput.Unreadable("a character beyond the last", [.. "// "u8, 0xF4, 0x90, 0x80, 0x80]),
        MalformedInput.Wrong("escape sequences outside a text", "\u001B[2J\u001B]0;title\a"),
        MalformedInput.Wrong("right-to-left marks in a comment", Sample.Text + "// \u202Eabc\u202C \u2066x\u2069\n"),
        MalformedInput.Wrong("signs that only look like a letter", Sample.Steps("remove 😀")),
    ];
}
