using System.Globalization;
using Antlr4.Runtime;
using Antlr4.Runtime.Misc;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Hands a text to the generated lexer, one UTF-16 unit at a time. The lexer remembers its decisions for ASCII only and
/// works every other character out anew, which is a hundred times slower; so each of those is shown as an ASCII character
/// of its class, and the lexer sees no other. Offsets stay those of the text.
/// </summary>
internal sealed class CharacterStream(string content) : ICharStream
{
    // An upper-case letter is in no keyword, and '$' in no token but a text or a comment.
    private const char Letter = 'A';
    private const char Blank = ' ';
    private const char Quote = '"';
    private const char Other = '$';

    private int _tokenStart;

    /// <inheritdoc/>
    public int Index { get; private set; }

    /// <inheritdoc/>
    public int Size => content.Length;

    /// <inheritdoc/>
    public string SourceName => IntStreamConstants.UnknownSourceName;

    /// <summary>Notes that the next token starts here, and returns its first character.</summary>
    public char BeginToken()
    {
        _tokenStart = Index;
        return content[Index];
    }

    /// <inheritdoc/>
    public int LA(int i)
    {
        var position = Index + (i > 0 ? i - 1 : i);
        if ((uint)position >= (uint)content.Length)
        {
            return IntStreamConstants.EOF;
        }

        var character = content[position];
        return char.IsAscii(character) ? character : StandIn(character, position);
    }

    /// <inheritdoc/>
    public void Consume() => Index++;

    /// <inheritdoc/>
    public int Mark() => 0;

    /// <inheritdoc/>
    public void Release(int marker)
    {
    }

    /// <inheritdoc/>
    public void Seek(int index) => Index = index;

    /// <inheritdoc/>
    public string GetText(Interval interval) => content.Substring(interval.a, interval.Length);

    /// <summary>Whether a character is a typographic double quote.</summary>
    public static bool IsTypographicQuote(char character) => character is '\u201C' or '\u201D' or '\u201E' or '\u201F';

    private char StandIn(char character, int position) => character switch
    {
        '\u00A0' or '\uFEFF' => Blank,

        // Within a text that began with a plain quote a typographic one is a character like any other.
        _ when IsTypographicQuote(character) => position != _tokenStart && content[_tokenStart] == Quote ? Other : Quote,
        _ => CharUnicodeInfo.GetUnicodeCategory(character) switch
        {
            UnicodeCategory.UppercaseLetter or UnicodeCategory.LowercaseLetter or UnicodeCategory.TitlecaseLetter
                or UnicodeCategory.ModifierLetter or UnicodeCategory.OtherLetter
                or UnicodeCategory.LetterNumber or UnicodeCategory.OtherNumber => Letter,
            _ => Other,
        },
    };
}
