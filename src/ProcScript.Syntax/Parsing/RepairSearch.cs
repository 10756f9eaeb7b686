using System.Collections.Immutable;
using Antlr4.Runtime;
using Antlr4.Runtime.Atn;
using ProcScript.Syntax.Text;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>Looks for the one change to the tokens after which the grammar takes the text furthest.</summary>
internal sealed class RepairSearch(SourceText text, ParserTokenStream tokens, SentenceLookahead lookahead)
{
    /// <summary>How many tokens a change is judged by; and how many where several changes do equally well on those.</summary>
    private const int Window = 8;
    private const int WideWindow = 64;

    /// <summary>How many of them it must bring in at least.</summary>
    private const int Enough = 3;

    // The slot before the tokens is for the one that is put in.
    private int[] _ahead = [];
    private readonly List<(Repair Repair, int Reach, int Rank)> _found = [];

    /// <summary>Finds the change, or null where none takes the text on.</summary>
    public Repair? Find(ATNState state, RuleContext context)
    {
        if (tokens.LA(1) == TokenConstants.EOF)
        {
            return null;
        }

        _ahead = [TokenConstants.InvalidType, .. tokens.Kinds(Window)];
        _found.Clear();
        var expected = lookahead.Expected(state, context, []);
        var isOnNewLine = IsOnNewLine();
        if (tokens.LA(1) is not (LEFT_BRACE or RIGHT_BRACE))
        {
            TryDeletion(state, context, isOnNewLine);
        }

        foreach (var kind in expected)
        {
            TryInsertion(state, context, kind, expected, isOnNewLine);
            TryReplacement(state, context, kind, isOnNewLine);
        }

        return Best(state, context);
    }

    /// <summary>Whether the next token is the first of its line.</summary>
    public bool IsOnNewLine() =>
        !tokens.HasPrevious || text.LineAt(Math.Max(0, tokens.Previous.End - 1)) < text.LineAt(tokens.Peek(0).Start);

    private void TryDeletion(ATNState state, RuleContext context, bool isOnNewLine)
    {
        var reach = 1 + lookahead.Reach(state, context, _ahead.AsSpan(2));
        var isRepeated = tokens.HasPrevious && tokens.Previous.Kind == tokens.Peek(0).Kind
            && text.Content.AsSpan(tokens.Previous.Start, tokens.Previous.Span.Length)
                .SequenceEqual(text.Content.AsSpan(tokens.Peek(0).Start, tokens.Peek(0).Span.Length));
        var rank = isRepeated ? Rank.Repeated : isOnNewLine ? Rank.Last : Rank.Surplus;
        Note(new Repair(RepairAction.Delete, tokens.Peek(0).Kind, BeginsSentence: false, []), reach, rank);
    }

    private void TryInsertion(ATNState state, RuleContext context, int kind, SortedSet<int> expected, bool isOnNewLine)
    {
        // Braces were put in before; and a word that may serve as a name or a unit is no better than a name.
        if (kind is TokenConstants.EOF or LEFT_BRACE or RIGHT_BRACE or UNCLOSED_STRING or DECIMAL or MINUS
            || (kind == IN && expected.Contains(NAME))
            || (kind != NAME && expected.Contains(NAME) && TokenNames.FirstOf(RULE_name).Contains(kind)))
        {
            return;
        }

        _ahead[0] = kind;
        var reach = lookahead.Reach(state, context, _ahead) - 1;
        var begins = !lookahead.Continues(state, context, kind);
        var rank = kind switch
        {
            NAME or STRING or INTEGER => Rank.Value,
            _ when begins => isOnNewLine || tokens.Previous.Kind == LEFT_BRACE ? Rank.StartOfLine : Rank.StartWithinLine,
            _ => isOnNewLine ? Rank.Last : Rank.Joining,
        };
        Note(new Repair(RepairAction.Insert, kind, begins, Alike(kind, expected)), reach, rank);
    }

    // Where only some words do for a name, a unit is meant, and "in" is one. Where a fraction would do, a number is.
    private static ImmutableArray<int> Alike(int kind, SortedSet<int> expected) => kind switch
    {
        INTEGER when expected.Contains(DECIMAL) => [INTEGER, DECIMAL],
        NAME when expected.Contains(IN) && !expected.IsSupersetOf(TokenNames.FirstOf(RULE_name).ToIntegerList()) => [IN, NAME],
        _ => [kind],
    };

    private void TryReplacement(ATNState state, RuleContext context, int kind, bool isOnNewLine)
    {
        var next = tokens.Peek(0);
        var isRespelt = next.Kind == NAME && TokenNames.Literal(kind) is { } literal
            && Spelling.IsNear(text.Content.AsSpan(next.Start, next.Span.Length), literal);
        var isReserved = kind == NAME && !isOnNewLine && TokenNames.IsReserved(next.Kind);
        if (isRespelt || isReserved)
        {
            _ahead[1] = kind;
            var reach = lookahead.Reach(state, context, _ahead.AsSpan(1));
            _ahead[1] = next.Kind;
            var action = isRespelt ? RepairAction.Respell : RepairAction.TakeAsName;
            Note(new Repair(action, kind, BeginsSentence: false, []), reach, isRespelt ? Rank.Respelt : Rank.Reserved);
        }
    }

    private void Note(Repair repair, int reach, int rank) => _found.Add((repair, reach, rank));

    private Repair? Best(ATNState state, RuleContext context)
    {
        var best = _found.Count > 0 ? _found[0] : (Repair: null!, Reach: 0, Rank: 0);
        foreach (var found in _found)
        {
            if (found.Reach > best.Reach || (found.Reach == best.Reach && found.Rank > best.Rank))
            {
                best = found;
            }
        }

        if (best.Reach < Math.Min(Enough, _ahead.Length - 1))
        {
            return null;
        }

        _found.RemoveAll(found => found.Repair.Action != best.Repair.Action || found.Reach != best.Reach || found.Rank != best.Rank);
        if (_found.Count > 1 && best.Repair.Action == RepairAction.Insert)
        {
            KeepFarthest(state, context);
        }

        return _found[0].Repair with { Choice = [.. _found.SelectMany(found => found.Repair.Choice)] };
    }

    // Several words may begin alike: an energy and a part both have a title and a block.
    private void KeepFarthest(ATNState state, RuleContext context)
    {
        _ahead = [TokenConstants.InvalidType, .. tokens.Kinds(WideWindow)];
        var farthest = 0;
        for (var i = 0; i < _found.Count; i++)
        {
            _ahead[0] = _found[i].Repair.Kind;
            _found[i] = _found[i] with { Reach = lookahead.Reach(state, context, _ahead) };
            farthest = Math.Max(farthest, _found[i].Reach);
        }

        _found.RemoveAll(found => found.Reach < farthest);
    }

    /// <summary>Which change is the likelier one when two take the text equally far.</summary>
    private static class Rank
    {
        public const int Respelt = 9;
        public const int Reserved = 8;
        public const int Repeated = 7;
        public const int Joining = 6;
        public const int Value = 5;
        public const int StartOfLine = 4;
        public const int Surplus = 3;
        public const int StartWithinLine = 2;
        public const int Last = 1;
    }
}
