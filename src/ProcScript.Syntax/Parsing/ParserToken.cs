using Antlr4.Runtime;

namespace ProcScript.Syntax.Parsing;

/// <summary>A token as the generated parser asks for it. The tree is built from places, so it carries no text.</summary>
internal sealed class ParserToken(Lexeme lexeme, int index) : IToken
{
    private Lexeme _lexeme = lexeme;

    /// <summary>The token beside it that it has changed places with, if any.</summary>
    public Lexeme? Partner { get; init; }

    /// <summary>Makes what stands behind it a part of it.</summary>
    public void Extend(int end) => _lexeme = _lexeme with { End = end };

    /// <inheritdoc/>
    public int Type => _lexeme.Kind;

    /// <inheritdoc/>
    public int StartIndex => _lexeme.Start;

    /// <inheritdoc/>
    public int StopIndex => _lexeme.End - 1;

    /// <inheritdoc/>
    public int TokenIndex => index;

    /// <inheritdoc/>
    public string Text => "";

    /// <inheritdoc/>
    public int Line => 0;

    /// <inheritdoc/>
    public int Column => 0;

    /// <inheritdoc/>
    public int Channel => TokenConstants.DefaultChannel;

    /// <inheritdoc/>
    public ITokenSource? TokenSource => null;

    /// <inheritdoc/>
    public ICharStream? InputStream => null;
}
