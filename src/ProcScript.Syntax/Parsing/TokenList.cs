using System.Collections.Immutable;
using Antlr4.Runtime;
using ProcScript.Syntax.Generated;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Syntax.Parsing;

/// <summary>Reads a text into tokens that leave nothing out.</summary>
internal static class TokenList
{
    private static readonly ImmutableArray<TokenCategory> Categories =
        [.. Enumerable.Range(0, ProcScriptParser._ATN.maxTokenType + 1).Select(Categorize)];

    /// <summary>All tokens of a text, in order.</summary>
    public static ImmutableArray<SyntaxToken> Read(string content)
    {
        var reader = new TokenReader(content);
        var tokens = ImmutableArray.CreateBuilder<SyntaxToken>(content.Length / 3);
        for (var start = 0; start < content.Length; start = reader.Position)
        {
            var kind = reader.Read();
            tokens.Add(new SyntaxToken(Categories[kind], TextSpan.FromBounds(start, reader.Position)));
        }

        return tokens.DrainToImmutable();
    }

    /// <summary>The tokens from a place between two of them on, read while they are asked for.</summary>
    public static IEnumerable<SyntaxToken> ReadFrom(string content, int start)
    {
        var reader = new TokenReader(content);
        reader.MoveTo(start);
        while (start < content.Length)
        {
            var kind = reader.Read();
            yield return new SyntaxToken(Categories[kind], TextSpan.FromBounds(start, reader.Position));
            start = reader.Position;
        }
    }

    private static TokenCategory Categorize(int kind) => kind switch
    {
        ProcScriptLexer.NAME => TokenCategory.Name,
        ProcScriptLexer.STRING or ProcScriptLexer.UNCLOSED_STRING => TokenCategory.Text,
        ProcScriptLexer.INTEGER or ProcScriptLexer.DECIMAL or ProcScriptLexer.SCREW_SIZE => TokenCategory.Number,
        ProcScriptLexer.COMMENT => TokenCategory.Comment,
        ProcScriptLexer.NEWLINE => TokenCategory.LineBreak,
        ProcScriptLexer.WHITE_SPACE => TokenCategory.WhiteSpace,
        ProcScriptLexer.UNKNOWN or TokenConstants.InvalidType => TokenCategory.Unknown,
        _ => TokenNames.Literal(kind) is { } literal && char.IsAsciiLetter(literal[0]) ? TokenCategory.Keyword : TokenCategory.Punctuation,
    };
}
