using System.Collections.Frozen;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Puts a block around steps that stand right in a procedure: a stage, the work, or the rules of the refit, as their verbs say. So a block
/// that was forgotten costs one finding, which says so, and the steps are in the tree.
/// </summary>
internal sealed class StrayStepRepair
{
    private static readonly FrozenSet<int> WorkVerbs = new[] { REPLACE, REPAIR, CLEAN, INSPECT, ADJUST, MEASURE, TASK, RECORD }.ToFrozenSet();

    private static readonly FrozenSet<int> RefitVerbs =
        new[] { FASTEN, TIGHTEN, ENGAGE, PLUG, CONNECT, RENEW, RETURN, FIT, RESTORE, FILL, UNSUPPORT, SNUG }.ToFrozenSet();

    private static readonly FrozenSet<int> StepStarts = TokenNames.FirstOf(RULE_step).ToIntegerList().Concat(TokenNames.FirstOf(RULE_refitRule).ToIntegerList()).ToFrozenSet();

    private static readonly FrozenSet<int> ItemStarts = TokenNames.FirstOf(RULE_procedureItem).ToIntegerList().ToFrozenSet();

    private readonly SourceText _text;
    private readonly List<Lexeme> _lexemes;
    private readonly FindingLog _log;
    private readonly List<Lexeme> _mended;

    private StrayStepRepair(SourceText text, List<Lexeme> lexemes, FindingLog log)
    {
        _text = text;
        _lexemes = lexemes;
        _log = log;
        _mended = new List<Lexeme>(lexemes.Count);
    }

    /// <summary>The tokens with a block around each run of steps that has none.</summary>
    public static List<Lexeme> Mend(SourceText text, List<Lexeme> lexemes, FindingLog log)
    {
        var repair = new StrayStepRepair(text, lexemes, log);
        repair.ReadFile();
        return repair._mended.Count == lexemes.Count ? lexemes : repair._mended;
    }

    private void ReadFile()
    {
        Lexeme? title = null;
        var isProcedure = false;
        for (var i = 0; i < _lexemes.Count; i++)
        {
            var lexeme = _lexemes[i];
            switch (lexeme.Kind)
            {
                case PROCEDURE when i + 1 < _lexemes.Count && _lexemes[i + 1].Kind != LEFT_BRACE:
                    (isProcedure, title) = (true, null);
                    break;
                case MACHINE or TOOL or SUPPLY or CERTIFICATE or FASTENER or CLIP or CONNECTOR or LINE or BOND or USE when IsFirst(i):
                    isProcedure = false;
                    break;
                case STRING when isProcedure:
                    title = lexeme;
                    break;
                case LEFT_BRACE when isProcedure:
                    i = ReadBlock(i, title);
                    (isProcedure, title) = (false, null);
                    continue;
                case LEFT_BRACE:
                    i = CopyBlock(i);
                    continue;
            }

            _mended.Add(lexeme);
        }
    }

    /// <summary>Reads a block of a procedure, from its brace on; returns where it ends.</summary>
    private int ReadBlock(int brace, Lexeme? title)
    {
        _mended.Add(_lexemes[brace]);
        var isRepeated = false;
        for (var i = brace + 1; i < _lexemes.Count; i++)
        {
            var lexeme = _lexemes[i];
            if (SortAt(i) is { } sort && !(i == brace + 1 && IsGoalWithoutItsWord(i)))
            {
                i = ReadRun(i, sort, title);
                isRepeated = false;
                continue;
            }

            switch (lexeme.Kind)
            {
                case RIGHT_BRACE:
                    _mended.Add(lexeme);
                    return i;
                case LEFT_BRACE:
                    i = isRepeated ? ReadBlock(i, title) : CopyBlock(i);
                    isRepeated = false;
                    continue;
                case EACH or WHEN:
                    isRepeated = true;
                    break;
                case STAGE or WORK or REFIT or GOAL or DO:
                    isRepeated = false;
                    break;
            }

            _mended.Add(lexeme);
        }

        return _lexemes.Count;
    }

    /// <summary>Reads steps up to the first word that is none; returns the last token of them.</summary>
    private int ReadRun(int first, StraySort sort, Lexeme? title)
    {
        var last = first;
        while (last + 1 < _lexemes.Count && _lexemes[last + 1].Kind != RIGHT_BRACE && !EndsRun(last + 1, sort))
        {
            last = _lexemes[last + 1].Kind == LEFT_BRACE ? EndOfBlock(last + 1) : last + 1;
        }

        var (start, end) = (_lexemes[first].Start, _lexemes[last].End);
        _mended.Add(new Lexeme(sort switch { StraySort.Work => WORK, StraySort.Refit => REFIT, _ => STAGE }, start, start));
        if (sort == StraySort.Stage)
        {
            _mended.Add(new Lexeme(STRING, start, start));
        }

        _mended.Add(new Lexeme(LEFT_BRACE, start, start));
        _mended.AddRange(_lexemes[first..(last + 1)]);
        _mended.Add(new Lexeme(RIGHT_BRACE, end, end));
        if (_log.TakesAnother())
        {
            _log.Add(StrayStep.At(_text, _lexemes[first].Span, TextSpan.FromBounds(start, end), sort, title is { } text ? _text.Slice(text.Span) : "\"Strip\""));
        }

        return last;
    }

    /// <summary>Whether what a procedure begins with, a verb with an item and then another thing, is what it is for.</summary>
    private bool IsGoalWithoutItsWord(int at) =>
        at + 2 < _lexemes.Count && _lexemes[at + 1].Kind == NAME && (_lexemes[at + 2].Kind == LEFT_BRACKET || (IsFirst(at + 2) && SortAt(at + 2) is null))
        && _lexemes[at].Kind is REPLACE or REPAIR or CLEAN or INSPECT or ADJUST or REMOVE;

    private bool EndsRun(int at, StraySort sort)
    {
        var kind = _lexemes[at].Kind;
        if (kind is STAGE or WORK || (kind == REFIT && at + 1 < _lexemes.Count && _lexemes[at + 1].Kind == LEFT_BRACE) || (kind == GOAL && IsFirst(at)))
        {
            return true;
        }

        return IsFirst(at) && (SortAt(at) is { } other ? other != sort : !StepStarts.Contains(kind) && ItemStarts.Contains(kind));
    }

    /// <summary>The block that the step which begins with a token belongs in; null where no step begins, or where it may stand as it is.</summary>
    private StraySort? SortAt(int at)
    {
        var kind = _lexemes[at].Kind;
        var isText = at + 1 < _lexemes.Count && _lexemes[at + 1].Kind is STRING or UNCLOSED_STRING;
        var isItem = at + 1 < _lexemes.Count && _lexemes[at + 1].Kind is NAME or INTEGER;
        if (!StepStarts.Contains(kind) || kind is DO or EACH or WHEN or NAME || !Begins(at) || (ItemStarts.Contains(kind) && (isText || !isItem)))
        {
            return null;
        }

        return WorkVerbs.Contains(kind) ? StraySort.Work : RefitVerbs.Contains(kind) ? StraySort.Refit : isItem || isText ? StraySort.Stage : null;
    }

    // Whether a sentence may begin with a token: on a new line, behind a brace, or behind a step of the same line.
    private bool Begins(int at) => IsFirst(at) || _lexemes[at - 1].Kind is LEFT_BRACE or RIGHT_BRACE;

    private bool IsFirst(int at) => at == 0 || _text.LineAt(_lexemes[at].Start) > _text.LineAt(_lexemes[at - 1].Start);

    private int CopyBlock(int brace)
    {
        var end = EndOfBlock(brace);
        _mended.AddRange(_lexemes[brace..(end + 1)]);
        return end;
    }

    private int EndOfBlock(int brace)
    {
        var depth = 0;
        for (var i = brace; i < _lexemes.Count; i++)
        {
            depth += _lexemes[i].Kind switch { LEFT_BRACE => 1, RIGHT_BRACE => -1, _ => 0 };
            if (depth == 0)
            {
                return i;
            }
        }

        return _lexemes.Count - 1;
    }
}

/// <summary>What block steps are missing around them.</summary>
internal enum StraySort
{
    /// <summary>A stage: the verbs take off.</summary>
    Stage,

    /// <summary>The work.</summary>
    Work,

    /// <summary>The rules of the refit.</summary>
    Refit,
}
