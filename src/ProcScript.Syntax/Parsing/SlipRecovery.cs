using System.Collections.Immutable;
using Antlr4.Runtime;
using Antlr4.Runtime.Atn;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Makes the parser go on after a slip. A single missing, misspelt or surplus word is mended on the spot. Otherwise the
/// sentence is given up and reading goes on with the next one of the block, so that one slip costs one finding and the rest
/// of the file is in the tree.
/// </summary>
internal sealed class SlipRecovery(
    ParserTokenStream tokens, SentenceLookahead lookahead, RepairSearch repairs, SlipReport report) : IAntlrErrorStrategy
{
    /// <summary>After so many slips a file is not read any further.</summary>
    private const int MostSlips = 1000;

    /// <summary>How many tokens of a sentence must fit before one within a line counts as its start.</summary>
    private const int SureStart = 8;

    /// <summary>How many words of the head of a block may be missing for the block to be read all the same.</summary>
    private const int MostBridged = 3;

    private int _slips;
    private int _insertedBefore = -1;
    private bool _isReported;

    /// <inheritdoc/>
    public void Reset(Parser recognizer)
    {
    }

    /// <inheritdoc/>
    public bool InErrorRecoveryMode(Parser recognizer) => false;

    /// <inheritdoc/>
    public void ReportMatch(Parser recognizer)
    {
    }

    /// <inheritdoc/>
    public void Sync(Parser recognizer)
    {
        var state = recognizer.Atn.states[recognizer.State];
        if (!lookahead.Accepts(state, recognizer.Context, tokens.LA(1)))
        {
            Mend(recognizer, state);
        }
    }

    /// <inheritdoc/>
    public IToken RecoverInline(Parser recognizer)
    {
        Mend(recognizer, recognizer.Atn.states[recognizer.State]);
        var token = recognizer.CurrentToken;
        recognizer.Consume();
        return token;
    }

    /// <inheritdoc/>
    public void ReportError(Parser recognizer, RecognitionException e)
    {
        if (!_isReported)
        {
            _isReported = true;
            var found = e.OffendingToken.TokenIndex - tokens.Index;
            report.Unexpected(found, lookahead.Expected(recognizer.Atn.states[recognizer.State], recognizer.Context, tokens.Kinds(found)));
        }
    }

    /// <inheritdoc/>
    public void Recover(Parser recognizer, RecognitionException e)
    {
        // Only where the next sentence can follow is there a place to go on.
        if (recognizer.Context.RuleIndex != RULE_file && !Blocks.IsSentence(recognizer.Context.RuleIndex))
        {
            throw e;
        }

        _isReported = false;
        Skip(recognizer, null);
    }

    /// <summary>Makes the next token one that may stand here, or gives the sentence up.</summary>
    private void Mend(Parser parser, ATNState state)
    {
        if (++_slips > MostSlips && tokens.LA(1) != TokenConstants.EOF)
        {
            report.GiveUp();
            tokens.Cut();
        }

        var start = parser.CurrentToken.TokenIndex;
        var next = tokens.Peek(0).Start;
        var repair = _insertedBefore == next || report.IsDisturbed(next) ? null : repairs.Find(state, parser.Context);
        if (repair is not null)
        {
            report.Repaired(repair);
            Apply(repair);
        }
        else if (JointWithoutName(parser, state) is { } kind)
        {
            report.MissingJointName(PartAround(parser.Context), TokenWords.SpanOf(kind));
            Insert([AS, NAME]);
        }
        else
        {
            Report(parser, state);
            Skip(parser, state);
            if (!lookahead.Accepts(state, parser.Context, tokens.LA(1)))
            {
                _isReported = true;
                throw new InputMismatchException(parser);
            }
        }

        StartAnew(parser, start);
    }

    /// <summary>The kind of a joint that ends behind it: both <c>as</c> and the name are missing.</summary>
    private ParserRuleContext? JointWithoutName(Parser parser, ATNState state)
    {
        var kind = parser.Context switch
        {
            JointDeclarationContext joint => joint.name(),
            CoverContext cover => cover.name(),
            _ => null,
        };
        return kind is not null && lookahead.Expected(state, parser.Context, []).SetEquals([AS]) && (repairs.IsOnNewLine() || tokens.LA(1) is RIGHT_BRACE or LEFT_BRACE or AT or TO or ON or CARRIES)
            ? kind
            : null;
    }

    private static ParserRuleContext? PartAround(RuleContext context)
    {
        for (var around = context; around is not null; around = around.Parent)
        {
            if (around is PartDeclarationContext part)
            {
                return part.reference();
            }
        }

        return null;
    }

    private void Report(Parser parser, ATNState state)
    {
        if (tokens.LA(1) == LEFT_BRACE && lookahead.Bridge(state, parser.Context, LEFT_BRACE, MostBridged) is { } missing)
        {
            report.MissingHead(missing);
        }
        else
        {
            report.Unexpected(0, lookahead.Expected(state, parser.Context, []));
        }
    }

    private void Apply(Repair repair)
    {
        switch (repair.Action)
        {
            case RepairAction.Insert:
                _insertedBefore = tokens.Peek(0).Start;
                var isBehind = tokens.HasPrevious && !(repairs.IsOnNewLine() && repair.BeginsSentence);
                tokens.Insert(repair.Kind, isBehind ? tokens.Previous.End : tokens.Peek(0).Start);
                break;
            case RepairAction.Delete:
                Consume(repair.Length);
                break;
            case RepairAction.Quote:
                Consume(repair.Length - 1);
                tokens.ReplaceKind(STRING, tokens.Peek(0).Start);
                break;
            case RepairAction.JoinName:
                tokens.ExtendPrevious(repair.Length);
                break;
            case RepairAction.Swap:
                tokens.Swap();
                break;
            default:
                Consume(repair.Length - 1);
                tokens.ReplaceKind(repair.Kind);
                break;
        }
    }

    private void Consume(int count)
    {
        for (var i = 0; i < count; i++)
        {
            tokens.Consume();
        }
    }

    // The rules that were entered at the token that has changed start with the one that is there now.
    private static void StartAnew(Parser parser, int start)
    {
        var context = parser.Context;
        while (context is not null && context.Start.TokenIndex == start)
        {
            context.Start = parser.CurrentToken;
            context = (ParserRuleContext)context.Parent;
        }
    }

    /// <summary>
    /// Passes over tokens up to the next sentence, the end of the block, or a block that belongs to the sentence that was begun;
    /// <paramref name="state"/> says where in it the parser stands.
    /// </summary>
    private void Skip(Parser parser, ATNState? state)
    {
        var block = Blocks.Around(parser.Context);
        var isDisturbed = report.IsDisturbed(tokens.Peek(0).Start);
        for (; ; tokens.Consume())
        {
            switch (tokens.LA(1))
            {
                case TokenConstants.EOF:
                case RIGHT_BRACE when block != RULE_file:
                    return;
                case LEFT_BRACE when state is not null && lookahead.Bridge(state, parser.Context, LEFT_BRACE, MostBridged) is { } missing:
                    Insert(missing);
                    return;
                case LEFT_BRACE:
                    SkipBlock();
                    break;
                case var kind when StartsSentence(block, kind, isDisturbed):
                    return;
            }
        }
    }

    // The head of a block is done for, but not the block.
    private void Insert(ImmutableArray<int> kinds)
    {
        var place = tokens.HasPrevious ? tokens.Previous.End : tokens.Peek(0).Start;
        for (var i = kinds.Length - 1; i >= 0; i--)
        {
            tokens.Insert(kinds[i], place);
        }
    }

    // Stops on the closing brace, or before the end of the file.
    private void SkipBlock()
    {
        for (var depth = 0; tokens.Peek(1).Kind != TokenConstants.EOF; tokens.Consume())
        {
            depth += tokens.LA(1) switch { LEFT_BRACE => 1, RIGHT_BRACE => -1, _ => 0 };
            if (depth == 0)
            {
                return;
            }
        }
    }

    // An `in` within a line belongs to what stands before it, such as `each side in left, right`.
    private bool StartsSentence(int block, int kind, bool isDisturbed) =>
        Blocks.StartsSentence(block, kind) && (repairs.IsOnNewLine() || (!isDisturbed && kind != IN && Fits(block)));

    private bool Fits(int block)
    {
        var kinds = tokens.Kinds(SureStart);
        foreach (var rule in Blocks.SentencesOf(block))
        {
            if (lookahead.Fits(rule, kinds))
            {
                return true;
            }
        }

        return false;
    }
}
