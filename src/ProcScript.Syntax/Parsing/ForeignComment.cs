using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptLexer;

namespace ProcScript.Syntax.Parsing;

/// <summary>What is a comment in other languages.</summary>
/// <param name="Span">All of it, up to the end of its line or behind its closing sign.</param>
/// <param name="Opening">How long the sign is that opens it.</param>
internal readonly record struct ForeignComment(TextSpan Span, int Opening)
{
    private const string Closing = "*/";

    /// <summary>How far the sign is looked for that closes a comment of several lines.</summary>
    private const int Longest = 10_000;

    /// <summary>The comment that begins with a token; null where none does.</summary>
    /// <param name="content">The whole text.</param>
    /// <param name="lexeme">The token.</param>
    public static ForeignComment? Find(string content, Lexeme lexeme)
    {
        switch (lexeme.Kind)
        {
            case UNKNOWN when content[lexeme.Start] == '#':
                return ToEndOfLine(content, lexeme.Start, 1);
            case MINUS when Follows(content, lexeme, '-'):
                return ToEndOfLine(content, lexeme.Start, 2);
            case SLASH when Follows(content, lexeme, '*'):
                var inner = lexeme.Start + 2;
                var end = content.AsSpan(inner, Math.Min(Longest, content.Length - inner)).IndexOf(Closing);
                return end < 0
                    ? ToEndOfLine(content, lexeme.Start, 2)
                    : new ForeignComment(TextSpan.FromBounds(lexeme.Start, inner + end + Closing.Length), 2);
            default:
                return null;
        }
    }

    private static bool Follows(string content, Lexeme lexeme, char sign) => lexeme.End < content.Length && content[lexeme.End] == sign;

    private static ForeignComment ToEndOfLine(string content, int start, int opening)
    {
        var length = content.AsSpan(start).IndexOfAny('\r', '\n');
        return new ForeignComment(new TextSpan(start, length < 0 ? content.Length - start : length), opening);
    }
}
