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

    /// <summary>How many tokens may belong to one name.</summary>
    private const int MostJoined = 4;

    /// <summary>How many tokens of a text without quotes are looked at.</summary>
    private const int MostQuoted = 7;

    /// <summary>How far around a name is looked for.</summary>
    private const int Neighbourhood = 100_000;

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

        TryTwoWords(state, context, expected);
        TryRepeatedVerb(state, context);
        TryJoining(state, context, isOnNewLine);
        TrySwap(state, context);
        TryQuoting(state, context, expected, isOnNewLine);
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
        var rank = isRepeated ? Rank.Repeated : IsJoiningWord(tokens.Peek(0)) ? Rank.Respelt : isOnNewLine ? Rank.Last : Rank.Surplus;
        if (isOnNewLine && tokens.Peek(0).Kind == INTEGER && tokens.Peek(1) is { Kind: DOT or RIGHT_PAREN } sign && sign.Start == tokens.Peek(0).End)
        {
            // Steps are numbered on the card.
            Note(new Repair(RepairAction.Delete, INTEGER, BeginsSentence: false, []) { Length = 2 }, 2 + lookahead.Reach(state, context, Ahead(3)), Rank.Respelt);
        }

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
        var word = text.Content.AsSpan(next.Start, next.Span.Length);
        var isRespelt = (next.Kind == NAME && TokenNames.Literal(kind) is { } literal && Spelling.IsNear(word, literal)) || Synonyms.Means(word, kind);
        var isReserved = kind == NAME && !isOnNewLine && TokenNames.IsReserved(next.Kind);
        if (isRespelt || isReserved)
        {
            // Whoever mistakes one bracket mistakes the other.
            var closing = kind is LEFT_BRACKET or LEFT_PAREN ? Array.FindIndex(_ahead, token => token is RIGHT_BRACKET or RIGHT_PAREN) : -1;
            var closed = closing > 0 ? _ahead[closing] : 0;
            if (closing > 0)
            {
                _ahead[closing] = kind == LEFT_BRACKET ? RIGHT_BRACKET : RIGHT_PAREN;
            }

            _ahead[1] = kind;
            var reach = lookahead.Reach(state, context, _ahead.AsSpan(1));
            _ahead[1] = next.Kind;
            if (closing > 0)
            {
                _ahead[closing] = closed;
            }

            var action = isRespelt ? RepairAction.Respell : RepairAction.TakeAsName;
            Note(new Repair(action, kind, BeginsSentence: false, [kind]), reach, isRespelt ? Rank.Respelt : Rank.Reserved);
        }
    }

    private void TryTwoWords(ATNState state, RuleContext context, SortedSet<int> expected)
    {
        if (_ahead.Length <= 2)
        {
            return;
        }

        foreach (var kind in Synonyms.OfTwo(Word(0), Word(1)).Where(expected.Contains))
        {
            _ahead[2] = kind;
            Note(new Repair(RepairAction.Respell, kind, BeginsSentence: false, [kind]) { Length = 2 }, 1 + lookahead.Reach(state, context, _ahead.AsSpan(2)), Rank.TwoWords);
            _ahead[2] = tokens.Peek(1).Kind;
        }
    }

    /// <summary>A step takes one item: where a comma and another follow, the verb holds for both.</summary>
    private void TryRepeatedVerb(ATNState state, RuleContext context)
    {
        if (!IsJoiningWord(tokens.Peek(0)) || StepAround(context) is not { } step)
        {
            return;
        }

        _ahead[1] = step.Start.Type;
        Note(new Repair(RepairAction.RepeatVerb, step.Start.Type, BeginsSentence: true, []), lookahead.Reach(state, context, _ahead.AsSpan(1)), Rank.Respelt);
        _ahead[1] = tokens.Peek(0).Kind;
    }

    private static ParserRuleContext? StepAround(RuleContext context)
    {
        for (var around = context as ParserRuleContext; around is not null && !Blocks.IsBlock(around); around = around.Parent as ParserRuleContext)
        {
            if (around is ActionContext or StripStepContext)
            {
                return around;
            }
        }

        return null;
    }

    /// <summary>Words with a blank or a dash between them where one name is meant.</summary>
    private void TryJoining(ATNState state, RuleContext context, bool isOnNewLine)
    {
        if (isOnNewLine || !tokens.HasPrevious || tokens.Previous.Kind != NAME || tokens.Previous.IsMissing)
        {
            return;
        }

        var length = 0;
        while (length < MostJoined && JoinedAt(length) is > 0 and var more)
        {
            length += more;
            var here = tokens.Previous.Span.Cover(tokens.Peek(length - 1).Span);
            var isKnown = IsWrittenElsewhere(NameOf(text.Slice(here)), here);
            var isSure = tokens.Peek(0).Kind == MINUS || !IsWrittenElsewhere(Word(length - 1).ToString(), here);
            Note(
                new Repair(RepairAction.JoinName, NAME, BeginsSentence: false, []) { Length = length },
                length + lookahead.Reach(state, context, Ahead(1 + length)),
                isKnown ? Rank.KnownName : isSure ? Rank.Joined : Rank.Last);
        }
    }

    /// <summary>How many tokens the next word of a name takes; 0 where none follows.</summary>
    private int JoinedAt(int ahead) => tokens.Peek(ahead) switch
    {
        var word when IsJoiningWord(word) => 0,
        { Kind: NAME } word when text.LineAt(word.Start) == text.LineAt(tokens.Previous.Start) => 1,
        { Kind: MINUS } dash when dash.Start == Before(ahead) && tokens.Peek(ahead + 1) is { Kind: NAME } word && word.Start == dash.End => 2,
        _ => 0,
    };

    private int Before(int ahead) => ahead == 0 ? tokens.Previous.End : tokens.Peek(ahead - 1).End;

    /// <summary>Words with blanks or dashes between them, as one name.</summary>
    public static string NameOf(string words) => string.Join('_', words.Split([' ', '\t', '\r', '\n', '-', '\u2212'], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Whether a name is written in the neighbourhood, other than in the words that may make one up.</summary>
    private bool IsWrittenElsewhere(string name, TextSpan here)
    {
        var from = Math.Max(0, here.Start - Neighbourhood);
        var near = text.Content.AsSpan(from, Math.Min(text.Content.Length, here.End + Neighbourhood) - from);
        for (var at = near.IndexOf(name, StringComparison.Ordinal); at >= 0;)
        {
            var isWhole = (at == 0 || !IsNamePart(near[at - 1])) && (at + name.Length == near.Length || !IsNamePart(near[at + name.Length]));
            if (isWhole && (from + at < here.Start || from + at >= here.End))
            {
                return true;
            }

            var next = near[(at + 1)..].IndexOf(name, StringComparison.Ordinal);
            at = next < 0 ? -1 : at + 1 + next;
        }

        return false;
    }

    private static bool IsNamePart(char character) => char.IsLetterOrDigit(character) || character == '_';

    /// <summary>Words of a line where a text belongs: their quotes are missing.</summary>
    private void TryQuoting(ATNState state, RuleContext context, SortedSet<int> expected, bool isOnNewLine)
    {
        if (!expected.Contains(STRING) || isOnNewLine || tokens.Peek(0).Kind != NAME)
        {
            return;
        }

        for (var length = 1; length < Math.Min(_ahead.Length, MostQuoted) && IsOfLine(tokens.Peek(length - 1)); length++)
        {
            var last = _ahead[length];
            _ahead[length] = STRING;

            // More than the text itself has to make sense.
            var reach = lookahead.Reach(state, context, Ahead(length));
            if (reach > 1)
            {
                Note(new Repair(RepairAction.Quote, STRING, BeginsSentence: false, []) { Length = length }, length - 1 + reach, Rank.Quoted);
            }

            _ahead[length] = last;
        }
    }

    private bool IsOfLine(in Lexeme word) =>
        word.Kind is not (COMMA or LEFT_BRACE or RIGHT_BRACE or LEFT_PAREN or RIGHT_PAREN or LEFT_BRACKET or RIGHT_BRACKET or STRING or UNCLOSED_STRING or TokenConstants.EOF)
        && text.LineAt(word.Start) == text.LineAt(tokens.Previous.Start);

    private void TrySwap(ATNState state, RuleContext context)
    {
        if (_ahead.Length <= 2 || tokens.Peek(0).Kind is LEFT_BRACE or RIGHT_BRACE || tokens.Peek(1).Kind is LEFT_BRACE or RIGHT_BRACE or TokenConstants.EOF
            || text.LineAt(tokens.Peek(0).Start) != text.LineAt(tokens.Peek(1).Start))
        {
            return;
        }

        (_ahead[1], _ahead[2]) = (_ahead[2], _ahead[1]);
        Note(new Repair(RepairAction.Swap, _ahead[1], BeginsSentence: false, []), lookahead.Reach(state, context, _ahead.AsSpan(1)), Rank.Last);
        (_ahead[1], _ahead[2]) = (_ahead[2], _ahead[1]);
    }

    // The slot of the token that is put in counts as one.
    private ReadOnlySpan<int> Ahead(int from) => from < _ahead.Length ? _ahead.AsSpan(from) : [];

    private ReadOnlySpan<char> Word(int ahead) => tokens.Peek(ahead) is { Kind: not TokenConstants.EOF } word ? text.Content.AsSpan(word.Start, word.Span.Length) : [];

    private bool IsJoiningWord(in Lexeme word) =>
        word.Kind == COMMA || (word.Kind == NAME && text.Content.AsSpan(word.Start, word.Span.Length) is "and" or "And" or "then");

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
        public const int TwoWords = 12;
        public const int KnownName = 11;
        public const int Quoted = 10;
        public const int Respelt = 9;
        public const int Reserved = 8;
        public const int Joined = 8;
        public const int Repeated = 7;
        public const int Joining = 6;
        public const int Value = 5;
        public const int StartOfLine = 4;
        public const int Surplus = 3;
        public const int StartWithinLine = 2;
        public const int Last = 1;
    }
}
