using Antlr4.Runtime;
using ProcScript.Syntax.Generated;

namespace ProcScript.Syntax.Parsing;

/// <summary>Reads a text token by token, blanks and comments among them.</summary>
internal sealed class TokenReader
{
    private readonly CharacterStream _stream;
    private readonly ProcScriptLexer _lexer;

    public TokenReader(string content)
    {
        _stream = new CharacterStream(content);
        _lexer = new ProcScriptLexer(_stream, TextWriter.Null, TextWriter.Null);
    }

    /// <summary>Where the next token starts.</summary>
    public int Position => _stream.Index;

    /// <summary>Goes back, or on, to a place between two tokens.</summary>
    public void MoveTo(int position) => _stream.Seek(position);

    /// <summary>Reads the next token and returns its kind.</summary>
    public int Read()
    {
        if (_stream.Index >= _stream.Size)
        {
            return TokenConstants.EOF;
        }

        var first = _stream.BeginToken();
        if (!char.IsAscii(first) && Sign(first) is var sign and not TokenConstants.InvalidType)
        {
            _stream.Consume();
            return sign;
        }

        return _lexer.Interpreter.Match(_stream, Lexer.DEFAULT_MODE);
    }

    // The signs of the grammar beyond ASCII, each a token of its own, in place of the stand-in that the stream would show.
    private static int Sign(char character) => character switch
    {
        '\u00B1' => ProcScriptLexer.PLUS_MINUS,
        '\u00B0' => ProcScriptLexer.DEGREE,
        '\u00B7' or '\u22C5' => ProcScriptLexer.MIDDLE_DOT,
        '\u2212' => ProcScriptLexer.MINUS,
        '\u2264' => ProcScriptLexer.AT_MOST,
        '\u2265' => ProcScriptLexer.AT_LEAST,
        _ => TokenConstants.InvalidType,
    };
}
