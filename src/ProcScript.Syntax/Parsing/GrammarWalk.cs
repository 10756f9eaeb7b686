using System.Collections.Concurrent;
using System.Collections.Immutable;
using Antlr4.Runtime.Atn;
using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Goes through the tables of the grammar token by token, and knows at each moment in which rules it is and what may come. What the
/// grammar does not take is passed over, so that a slip further up does not end it.
/// </summary>
internal sealed class GrammarWalk
{
    private const int MostPlaces = 64;

    private static readonly ConcurrentDictionary<int, Closure> Closures = new();
    private static readonly ConcurrentDictionary<(int State, int Kind), ImmutableArray<Move>> Moves = new();

    // What is known right behind the brace of each block that is open, the file first.
    private readonly Stack<ImmutableArray<Place>> _blocks;
    private List<Place> _places;
    private readonly Stack<List<int>> _begun;
    private List<Place> _next = [];

    /// <summary>Which tokens begin the sentences of the innermost block, in order.</summary>
    public IReadOnlyList<int> Begun => _begun.Peek();

    /// <summary>Begins at the start of a declaration.</summary>
    public GrammarWalk()
    {
        _places = [new Place(_ATN.ruleToStartState[RULE_file], 0, null)];
        _blocks = new([[.. _places]]);
        _begun = new([[]]);
    }

    private GrammarWalk(GrammarWalk other)
    {
        _places = other._places;
        _blocks = new(other._blocks.Reverse());
        _begun = new(other._begun.Reverse().Select(tokens => tokens.ToList()));
    }

    /// <summary>Another walk that has come as far, and goes its own way from here.</summary>
    public GrammarWalk Fork() => new(this);

    /// <summary>Takes a token.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="index">Which one it is.</param>
    public void Take(int kind, int index)
    {
        Step(_places, kind, index);
        foreach (var block in _blocks)
        {
            if (_next.Count > 0)
            {
                break;
            }

            // A slip: the sentence is given up. What begins another one, of this block or one around it, is that.
            Step([.. block], kind, index);
            if (_next.Count > 0)
            {
                CloseDownTo(block);
            }
        }

        if (_next.Count > 0)
        {
            _places = _next;
            if (_places[0].Begins)
            {
                _begun.Peek().Add(index);
            }
        }

        if (kind == LEFT_BRACE)
        {
            _blocks.Push([.. _places]);
            _begun.Push([]);
        }
        else if (kind == RIGHT_BRACE && _blocks.Count > 1)
        {
            _blocks.Pop();
            _begun.Pop();
        }
    }

    /// <summary>The tokens that may come, each with the rules around it, the innermost first, and where they began.</summary>
    /// <param name="index">Which token would be the next.</param>
    public IEnumerable<Expectation> Expected(int index) => Expected(_places, index);

    /// <summary>
    /// What may still come in the sentence that is begun, and the token that it began at; null where none is. Where the grammar does not know
    /// yet which sentence it is, the first that it could be.
    /// </summary>
    public (int Began, ImmutableArray<string> Parts)? Rest()
    {
        var parts = ImmutableArray.CreateBuilder<string>();
        var (state, began, back) = (_places[0].State, _places[0].Began, _places[0].Return);
        while (Blocks.SentencesOf(state.ruleIndex).IsEmpty)
        {
            parts.AddRange(SentenceForm.From(state));
            if (Blocks.IsSentence(state.ruleIndex) || back is null)
            {
                return (began, parts.ToImmutable());
            }

            (state, began, back) = (back.State, back.Began, back.Return);
        }

        return null;
    }

    /// <summary>The words that have to follow a token, since the grammar has no others there: <c>by</c> behind <c>held</c>.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="index">Which one it would be.</param>
    /// <param name="isWord">Whether a kind is a word of the language.</param>
    public ImmutableArray<int> Following(int kind, int index, Func<int, bool> isWord)
    {
        var following = ImmutableArray<int>.Empty;
        var places = _places;
        for (var next = kind; ; index++)
        {
            places = Stepped(places, next, index);
            var expected = Expected(places, index + 1).Select(one => (one.Kind, one.Rules[0].Rule)).Distinct().Take(2).ToList();
            if (expected is not [var (only, rule)] || rule is RULE_name or RULE_unitName || !isWord(only))
            {
                return following;
            }

            next = only;
            following = following.Add(only);
        }
    }

    private static IEnumerable<Expectation> Expected(List<Place> places, int index)
    {
        foreach (var start in places)
        {
            for (var place = start; ; place = new Place(place.Return.State, place.Return.Began, place.Return.Return))
            {
                var closure = ClosureOf(place.State);
                foreach (var (consumer, calls) in closure.Consumers)
                {
                    var rules = RulesAround(place, consumer, calls, index);
                    var begins = BeginsSentence(consumer, calls);
                    foreach (var kind in KindsOf(consumer))
                    {
                        yield return new Expectation(kind, begins, rules);
                    }
                }

                if (!closure.Ends || place.Return is null)
                {
                    break;
                }
            }
        }
    }

    // Of all that may serve as a name, one is enough.
    private static IEnumerable<int> KindsOf(ATNState consumer) => consumer.ruleIndex == RULE_name
        ? [NAME]
        : Enumerable.Range(0, consumer.NumberOfTransitions).SelectMany(i => consumer.Transition(i).Label?.ToIntegerList() ?? []);

    private static ImmutableArray<(int Rule, int Began)> RulesAround(Place place, ATNState consumer, ImmutableArray<ATNState> calls, int index)
    {
        var rules = ImmutableArray.CreateBuilder<(int, int)>();
        rules.Add((consumer.ruleIndex, calls.IsEmpty ? place.Began : index));
        for (var i = calls.Length - 1; i >= 0; i--)
        {
            rules.Add((calls[i].ruleIndex, i == 0 ? place.Began : index));
        }

        for (var follow = place.Return; follow is not null; follow = follow.Return)
        {
            rules.Add((follow.State.ruleIndex, follow.Began));
        }

        return rules.DrainToImmutable();
    }

    private void CloseDownTo(ImmutableArray<Place> block)
    {
        while (_blocks.Peek() != block)
        {
            _blocks.Pop();
            _begun.Pop();
        }
    }

    private void Step(List<Place> places, int kind, int index) => _next = Stepped(places, kind, index);

    private static List<Place> Stepped(List<Place> places, int kind, int index)
    {
        var next = new List<Place>();
        foreach (var start in places)
        {
            for (var place = start; ; place = new Place(place.Return.State, place.Return.Began, place.Return.Return))
            {
                foreach (var move in MovesOf(place.State, kind))
                {
                    if (next.Count < MostPlaces)
                    {
                        next.Add(Moved(place, move, index));
                    }
                }

                if (!ClosureOf(place.State).Ends || place.Return is null)
                {
                    break;
                }
            }
        }

        return next;
    }

    private static Place Moved(Place place, Move move, int index)
    {
        var (back, began) = (place.Return, place.Began);
        foreach (var call in move.Calls)
        {
            (back, began) = (new Follow(call, began, back), index);
        }

        return new Place(move.Target, began, back, move.Begins);
    }

    private static bool BeginsSentence(ATNState consumer, ImmutableArray<ATNState> calls) =>
        calls is [var block, ..] && !Blocks.SentencesOf(block.ruleIndex).IsEmpty && Blocks.IsSentence(calls.Length > 1 ? calls[1].ruleIndex : consumer.ruleIndex);

    private static ImmutableArray<Move> MovesOf(ATNState state, int kind) => Moves.GetOrAdd((state.stateNumber, kind), key =>
    [
        .. from one in ClosureOf(_ATN.states[key.State]).Consumers
           from i in Enumerable.Range(0, one.State.NumberOfTransitions)
           let transition = one.State.Transition(i)
           where !transition.IsEpsilon && transition.Matches(key.Kind, 0, _ATN.maxTokenType)
           select new Move(transition.target, one.Calls, BeginsSentence(one.State, one.Calls)),
    ]);

    private static Closure ClosureOf(ATNState state) => Closures.GetOrAdd(state.stateNumber, static number =>
    {
        var consumers = ImmutableArray.CreateBuilder<(ATNState, ImmutableArray<ATNState>)>();
        var ends = Spread(_ATN.states[number], [], consumers, []);
        return new Closure(consumers.DrainToImmutable(), ends);
    });

    /// <summary>Finds what waits for a token; whether the rule that it began in can come to its end before one.</summary>
    private static bool Spread(
        ATNState state, ImmutableStack<ATNState> calls, ImmutableArray<(ATNState, ImmutableArray<ATNState>)>.Builder consumers, HashSet<(ATNState, string)> reached)
    {
        if (!reached.Add((state, string.Join(' ', calls.Select(call => call.stateNumber)))))
        {
            return false;
        }

        if (state is RuleStopState)
        {
            return calls.IsEmpty || Spread(calls.Peek(), calls.Pop(), consumers, reached);
        }

        var (ends, waits) = (false, false);
        for (var i = 0; i < state.NumberOfTransitions; i++)
        {
            switch (state.Transition(i))
            {
                case RuleTransition rule:
                    ends |= Spread(rule.target, calls.Push(rule.followState), consumers, reached);
                    break;
                case { IsEpsilon: true } transition:
                    ends |= Spread(transition.target, calls, consumers, reached);
                    break;
                default:
                    waits = true;
                    break;
            }
        }

        if (waits)
        {
            consumers.Add((state, [.. calls.Reverse()]));
        }

        return ends;
    }

    // A state of the grammar, and where the rules go on that called the one that it is in; with the token that each began at, and whether
    // the last token began a sentence.
    private readonly record struct Place(ATNState State, int Began, Follow? Return, bool Begins = false);

    private sealed class Follow(ATNState state, int began, Follow? back)
    {
        public ATNState State { get; } = state;

        public int Began { get; } = began;

        public Follow? Return { get; } = back;
    }

    private readonly record struct Move(ATNState Target, ImmutableArray<ATNState> Calls, bool Begins);

    private sealed record Closure(ImmutableArray<(ATNState State, ImmutableArray<ATNState> Calls)> Consumers, bool Ends);
}

/// <summary>A token that may come.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Begins">Whether it begins a sentence.</param>
/// <param name="Rules">The rules that it would stand in, the innermost first, and the token that each began at.</param>
internal readonly record struct Expectation(int Kind, bool Begins, ImmutableArray<(int Rule, int Began)> Rules);
