using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Puts in the braces that a file lacks. Where as many braces open as close, nothing is done. Elsewhere the indentation
/// tells which block was left open, or never opened; so the one brace costs one finding, and the blocks around it stay whole.
/// </summary>
internal sealed class BlockRepair
{
    private const int MostInsertions = 100;

    private readonly SourceText _text;
    private readonly List<Lexeme> _lexemes;
    private readonly FindingLog _log;
    private readonly List<Lexeme> _mended;
    private readonly Stack<OpenBlock> _open = new();

    // The lines since the innermost block opened that may be the head of a block, by the column they start in.
    private readonly List<LineHead> _heads = [];

    private int _insertions;

    // How many braces close too few (positive) or too many (negative).
    private int _balance;

    private BlockRepair(SourceText text, List<Lexeme> lexemes, int balance, FindingLog log)
    {
        _text = text;
        _lexemes = lexemes;
        _balance = balance;
        _log = log;
        _mended = new List<Lexeme>(lexemes.Count + Math.Abs(balance));
    }

    /// <summary>The tokens with every brace that the indentation asks for.</summary>
    public static List<Lexeme> Mend(SourceText text, List<Lexeme> lexemes, FindingLog log)
    {
        var balance = Balance(lexemes);
        return balance == 0 ? lexemes : new BlockRepair(text, lexemes, balance, log).Mend();
    }

    /// <summary>Whether as many braces open as close.</summary>
    public static bool IsBalanced(List<Lexeme> lexemes) => Balance(lexemes) == 0;

    private static int Balance(List<Lexeme> lexemes)
    {
        var balance = 0;
        foreach (var lexeme in lexemes)
        {
            balance += lexeme.Kind switch { LEFT_BRACE => 1, RIGHT_BRACE => -1, _ => 0 };
        }

        return balance;
    }

    private List<Lexeme> Mend()
    {
        var line = -1;
        var column = 0;
        for (var i = 0; i < _lexemes.Count; i++)
        {
            var lexeme = _lexemes[i];
            var at = _text.LineAt(lexeme.Start);
            var isFirst = at != line;
            if (isFirst)
            {
                EndLine();
                line = at;
                column = Column(line, lexeme.Start);
                CloseLeftOpen(lexeme, line, column);
            }

            if (lexeme.Kind == RIGHT_BRACE && !Closes(lexeme, isFirst, line, column))
            {
                continue;
            }

            if (_balance > 0 && lexeme.Kind == LEFT_BRACE && _mended is [.., { Kind: LEFT_BRACE }])
            {
                DropSecond(lexeme);
                continue;
            }

            if (isFirst && lexeme.Kind != RIGHT_BRACE)
            {
                ForgetHeads(column);
                _heads.Add(new LineHead(_mended.Count, column, Last: -1));
            }

            if (lexeme.Kind == LEFT_BRACE)
            {
                _open.Push(new OpenBlock(lexeme, line, column, _heads.Count));
            }

            _mended.Add(lexeme);
        }

        while (_balance > 0 && _open.TryPop(out var left))
        {
            InsertClosing(left, _lexemes[^1].End);
        }

        return _mended;
    }

    // A line that starts no further in than the line that opened the block cannot belong to the block, unless it closes it.
    private void CloseLeftOpen(Lexeme first, int line, int column)
    {
        while (_balance > 0 && _open.TryPeek(out var top) && top.Line < line
            && (column < top.Column || (column == top.Column && first.Kind != RIGHT_BRACE)))
        {
            Pop();
            InsertClosing(top, _mended[^1].End);
        }
    }

    /// <summary>Whether a closing brace stays: one too many goes, unless a block is found that it closes.</summary>
    private bool Closes(Lexeme brace, bool isFirst, int line, int column)
    {
        var hasOpen = _open.TryPeek(out var top);
        var isAstray = !hasOpen || (top.Line < line && (!isFirst || column > top.Column));
        if (_balance >= 0 || !isAstray)
        {
            if (hasOpen)
            {
                Pop();
            }

            return true;
        }

        _balance++;
        if (isFirst && Head(column) is { } head)
        {
            InsertOpening(head);
            ForgetHeads(column);
            return true;
        }

        if (_log.TakesAnother())
        {
            _log.Add(UnexpectedText.ClosesNothing(_text, brace.Span));
        }

        return false;
    }

    // No block begins with a brace.
    private void DropSecond(Lexeme brace)
    {
        _balance--;
        if (_log.TakesAnother())
        {
            _log.Add(UnexpectedText.OpensNothing(_text, brace.Span));
        }
    }

    private void Pop()
    {
        var heads = _open.Pop().Heads;
        _heads.RemoveRange(heads, _heads.Count - heads);
    }

    // Of the heads of one block each starts further in than the one before it.
    private void ForgetHeads(int column)
    {
        while (_heads.Count > FirstHead && _heads[^1].Column >= column)
        {
            _heads.RemoveAt(_heads.Count - 1);
        }
    }

    private int FirstHead => _open.TryPeek(out var top) ? top.Heads : 0;

    // A line that ends in a brace has its block already. Putting a brace in moves all that lies behind, so that is done so often only.
    private LineHead? Head(int column)
    {
        for (var i = _heads.Count - 1; i >= FirstHead && _insertions < MostInsertions; i--)
        {
            if (_heads[i].Column == column)
            {
                return _mended[_heads[i].Last].Kind is LEFT_BRACE or RIGHT_BRACE ? null : _heads[i];
            }
        }

        return null;
    }

    private void EndLine()
    {
        if (_heads.Count > 0 && _heads[^1].Last < 0)
        {
            _heads[^1] = _heads[^1] with { Last = _mended.Count - 1 };
        }
    }

    private void InsertClosing(OpenBlock block, int place)
    {
        _balance--;
        _mended.Add(new Lexeme(RIGHT_BRACE, place, place));
        if (_log.TakesAnother())
        {
            _log.Add(UnclosedBlock.NeverClosed(_text, block.Brace.Span, Before(_mended.Count - 1)));
        }
    }

    private void InsertOpening(LineHead head)
    {
        _insertions++;
        var end = _mended[head.Last].End;
        _mended.Insert(head.Last + 1, new Lexeme(LEFT_BRACE, end, end));
        if (_log.TakesAnother())
        {
            _log.Add(UnclosedBlock.NeverOpened(_text, TextSpan.FromBounds(_mended[head.First].Start, end)));
        }
    }

    // The last token before an index that the author wrote.
    private TextSpan Before(int index)
    {
        do
        {
            index--;
        }
        while (_mended[index].IsMissing);
        return _mended[index].Span;
    }

    private int Column(int line, int position)
    {
        const int TabWidth = 4;
        var column = 0;
        for (var i = _text.LineSpan(line).Start; i < position; i++)
        {
            column = _text.Content[i] == '\t' ? column + TabWidth - (column % TabWidth) : column + 1;
        }

        return column;
    }

    private readonly record struct OpenBlock(Lexeme Brace, int Line, int Column, int Heads);

    // A line by its first and its last token.
    private readonly record struct LineHead(int First, int Column, int Last);
}
