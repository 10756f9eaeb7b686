using System.Collections.Immutable;
using Antlr4.Runtime;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptLexer;

namespace ProcScript.Syntax.Parsing;

/// <summary>Splits a file into the tokens that the parser reads, and judges the words as such: characters, quotes, depth.</summary>
internal sealed class FileLexer
{
    /// <summary>How many blocks may stand within each other.</summary>
    public const int DeepestBlock = 64;

    /// <summary>
    /// How many words a file may have. Parsing takes some hundred bytes a word, so the limit on characters alone would let a file
    /// of single letters take gigabytes.
    /// </summary>
    public const int MostWords = 2_000_000;

    /// <summary>How long the sign is that is written with a slash between plus and minus.</summary>
    private const int Slashed = 3;

    private const int CancellationInterval = 1 << 14;

    private readonly SourceText _text;
    private readonly FindingLog _log;
    private readonly TokenReader _reader;
    private readonly List<Lexeme> _lexemes;
    private readonly List<SuppressionComment> _suppressions = [];
    private readonly CharacterCheck _characters;
    private readonly int _end;
    private int _depth;
    private int _mendedLine = -1;
    private MergeMarks? _merge;

    private FileLexer(SourceText text, TextSpan stretch, FindingLog log)
    {
        _text = text;
        _log = log;
        _end = stretch.End;
        _reader = new TokenReader(text.Content);
        _reader.MoveTo(stretch.Start);
        _characters = new CharacterCheck(text, log);

        // A word and the blank behind it take some six characters.
        _lexemes = new List<Lexeme>(16 + (stretch.Length / 6));
    }

    /// <summary>Reads the whole of a text.</summary>
    public static LexedFile Read(SourceText text, FindingLog log, CancellationToken cancellation) =>
        Read(text, new TextSpan(0, text.Content.Length), log, cancellation);

    /// <summary>Reads some lines of a text: no token reaches over the end of a line.</summary>
    public static LexedFile Read(SourceText text, TextSpan lines, FindingLog log, CancellationToken cancellation)
    {
        var lexer = new FileLexer(text, lines, log);
        lexer.ReadAll(cancellation);
        CommaCheck.Mend(text, lexer._lexemes, log);
        StageCheck.Report(text, lexer._lexemes, log);
        return new LexedFile(lexer._lexemes, lexer.Targeted());
    }

    private void ReadAll(CancellationToken cancellation)
    {
        for (var count = 0; ; count++)
        {
            if (count % CancellationInterval == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            var start = _reader.Position;
            var kind = start < _end ? _reader.Read() : TokenConstants.EOF;
            if (kind == TokenConstants.EOF)
            {
                _characters.EndFile();
                return;
            }

            Lexeme lexeme = new(kind, start, _reader.Position);
            if (kind == LESS_THAN && MergeMarks.Find(_text, start) is { } marks)
            {
                BeginMerge(marks);
            }
            else if (_merge is { } merge && start == merge.FirstEnd)
            {
                _merge = null;
                _reader.MoveTo(Math.Min(merge.Last.End, _end));
            }
            else if (ForeignComment.Find(_text.Content, lexeme) is { } comment)
            {
                TakeForeign(comment);
            }
            else
            {
                Take(lexeme);
            }

            if (_lexemes.Count > MostWords)
            {
                _log.Add(FileTooLarge.Words(Place(_lexemes[^1].Span), MostWords));
                _lexemes.Clear();
                return;
            }
        }
    }

    // The first version is read, and neither the marks nor the second.
    private void BeginMerge(MergeMarks marks)
    {
        _merge = marks;
        _reader.MoveTo(Math.Min(marks.First.End, _end));
        if (_log.TakesAnother())
        {
            _log.Add(MergeLeftOpen.At(_text, marks));
        }
    }

    private void TakeForeign(ForeignComment comment)
    {
        _reader.MoveTo(Math.Min(comment.Span.End, _end));
        if (_log.TakesAnother())
        {
            _log.Add(UnknownCharacter.ForeignComment(_text, comment.Span, comment.Opening));
        }
    }

    private void Take(Lexeme lexeme)
    {
        switch (lexeme.Kind)
        {
            case NEWLINE or WHITE_SPACE:
                break;
            case UNKNOWN when IsDash(lexeme):
                TakeDash(lexeme);
                break;
            case UNKNOWN:
                _characters.TakeUnknown(lexeme.Span);
                break;
            case COMMENT:
                _characters.TakeWords(lexeme.Span);
                if (SuppressionReader.Read(_text.Content, lexeme.Span) is { } suppression)
                {
                    _suppressions.Add(suppression);
                }

                break;
            case LEFT_BRACE:
                Open(lexeme);
                break;
            case RIGHT_BRACE:
                Close(lexeme);
                break;
            case PLUS_MINUS when lexeme.Span.Length == Slashed:
                Add(lexeme);
                if (_log.TakesAnother())
                {
                    _log.Add(UnknownCharacter.SlashedSign(_text, lexeme.Span));
                }

                break;
            case STRING:
                TakeText(lexeme);
                break;
            case UNCLOSED_STRING:
                TakeUnclosed(lexeme);
                break;
            case NAME:
                _characters.TakeName(lexeme.Span);
                Add(lexeme);
                break;
            default:
                Add(lexeme);
                break;
        }
    }

    private bool IsDash(Lexeme lexeme) =>
        _text.Content[lexeme.Start] is '\u2013' or '\u2014' or '\u2012' or '\u2010' or '\u2011' && char.IsAsciiDigit(After(lexeme));

    /// <summary>A dash before a number is a minus, and one between two numbers says from where to where.</summary>
    private void TakeDash(Lexeme lexeme)
    {
        var isRange = _lexemes.Count > 0 && _lexemes[^1].Kind is INTEGER or DECIMAL && _text.LineAt(_lexemes[^1].Start) == _text.LineAt(lexeme.Start);
        Add(lexeme with { Kind = isRange ? RANGE : MINUS });
        if (_log.TakesAnother())
        {
            _log.Add(UnknownCharacter.Dash(_text, lexeme.Span, isRange));
        }
    }

    private char After(Lexeme lexeme)
    {
        var at = lexeme.End;
        while (at < _text.Content.Length && _text.Content[at] == ' ')
        {
            at++;
        }

        return at < _text.Content.Length ? _text.Content[at] : '\0';
    }

    // What lies too deep is left out, so that the parser finds an empty block and has nothing to add.
    private void Add(Lexeme lexeme)
    {
        if (_depth <= DeepestBlock)
        {
            _lexemes.Add(lexeme);
        }
    }

    private void Open(Lexeme brace)
    {
        Add(brace);
        _depth++;
        if (_depth == DeepestBlock + 1 && _log.TakesAnother())
        {
            _log.Add(NestedTooDeep.At(Place(brace.Span), DeepestBlock));
        }
    }

    private void Close(Lexeme brace)
    {
        _depth = Math.Max(0, _depth - 1);
        Add(brace);
    }

    private void TakeText(Lexeme lexeme)
    {
        Add(lexeme);
        _characters.TakeText(lexeme.Span);
        _characters.TakeWords(lexeme.Span);
    }

    private void TakeUnclosed(Lexeme lexeme)
    {
        var line = _text.LineAt(lexeme.Start);
        var text = _mendedLine == line ? WithoutBlanks(lexeme) : Mended(lexeme, line);
        _mendedLine = line;
        _characters.ForgetLine(line);
        Add(text);
        _characters.TakeWords(text.Span);
        if (_log.TakesAnother())
        {
            _log.Add(UnclosedText.At(_text, text.Span));
        }
    }

    /// <summary>
    /// Finds where on its line an unclosed text most likely ends. The quote that is missing may be that of an earlier text of
    /// the line, which then ran on to the opening quote of the next. Reading goes on behind the end.
    /// </summary>
    private Lexeme Mended(Lexeme unclosed, int line)
    {
        for (var first = FirstOf(line); first < _lexemes.Count; first++)
        {
            var earlier = _lexemes[first];
            if (earlier.Kind == STRING && LikelyEnd(earlier) is var end and > 0)
            {
                Forget(first);
                return CutAt(end, earlier);
            }
        }

        return LikelyEnd(unclosed) is var cut and > 0 ? CutAt(cut, unclosed) : WithoutBlanks(unclosed);
    }

    /// <summary>The blanks behind the last word of a line are no part of a text that was meant to end on it.</summary>
    private Lexeme WithoutBlanks(Lexeme unclosed)
    {
        var end = unclosed.End;
        while (end > unclosed.Start + 1 && _text.Content[end - 1] == ' ')
        {
            end--;
        }

        return unclosed with { End = end };
    }

    private int LikelyEnd(Lexeme lexeme) => LoneQuotes.LikelyEnd(_text.Content, lexeme.Span);

    private int FirstOf(int line)
    {
        var start = _text.LineSpan(line).Start;
        var first = _lexemes.Count;
        while (first > 0 && _lexemes[first - 1].Start >= start)
        {
            first--;
        }

        return first;
    }

    private void Forget(int first)
    {
        for (var i = _lexemes.Count - 1; i >= first; i--)
        {
            _depth += _lexemes[i].Kind switch { LEFT_BRACE => -1, RIGHT_BRACE => 1, _ => 0 };
        }

        _lexemes.RemoveRange(first, _lexemes.Count - first);
    }

    private Lexeme CutAt(int end, Lexeme lexeme)
    {
        _reader.MoveTo(end);
        while (end > lexeme.Start + 1 && char.IsWhiteSpace(_text.Content[end - 1]))
        {
            end--;
        }

        return new Lexeme(UNCLOSED_STRING, lexeme.Start, end);
    }

    // A comment speaks of the next line that holds anything else.
    private ImmutableArray<SuppressionComment> Targeted()
    {
        var targeted = ImmutableArray.CreateBuilder<SuppressionComment>(_suppressions.Count);
        var next = 0;
        foreach (var suppression in _suppressions)
        {
            while (next < _lexemes.Count && _lexemes[next].Start < suppression.Span.End)
            {
                next++;
            }

            var line = next < _lexemes.Count ? _text.LineAt(_lexemes[next].Start) : _text.LineCount;
            targeted.Add(suppression with { TargetLine = line });
        }

        return targeted.MoveToImmutable();
    }

    private SourceSpan Place(TextSpan span) => new(_text.Path, span);
}
