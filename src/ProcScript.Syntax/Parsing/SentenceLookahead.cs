using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Antlr4.Runtime;
using Antlr4.Runtime.Atn;
using ProcScript.Syntax.Generated;

namespace ProcScript.Syntax.Parsing;

/// <summary>Tells how far the grammar would take a run of tokens from where the parser stands, without moving the parser.</summary>
internal sealed class SentenceLookahead(ATN atn)
{
    private readonly HashSet<Place> _reached = [];
    private List<Place> _places = [];
    private List<Place> _next = [];

    // Whether the rule looked into has come to its end on the way.
    private bool _ended;
    private bool _staysInSentence;

    /// <summary>Whether the token may come next.</summary>
    public bool Accepts(ATNState state, RuleContext? context, int kind)
    {
        // The sets are kept with the states, so this costs next to nothing where the token is expected.
        for (; ; context = context.Parent)
        {
            var expected = atn.NextTokens(state);
            if (expected.Contains(kind))
            {
                return true;
            }

            if (!expected.Contains(TokenConstants.EPSILON) || context is null || context.invokingState < 0)
            {
                return false;
            }

            state = After(context);
        }
    }

    /// <summary>Whether the token would go on with the sentence that the parser is in, not begin another.</summary>
    public bool Continues(ATNState state, RuleContext? context, int kind)
    {
        for (; context is not null && !Blocks.IsBlock(context); context = context.Parent)
        {
            if (atn.NextTokens(state).Contains(kind))
            {
                return true;
            }

            if (Blocks.IsSentence(context.RuleIndex) || !atn.NextTokens(state).Contains(TokenConstants.EPSILON))
            {
                return false;
            }

            state = After(context);
        }

        return false;
    }

    /// <summary>
    /// The fewest tokens that are missing before <paramref name="kind"/> may come in the sentence that the parser is in; null
    /// where that takes more than <paramref name="most"/>, or cannot be.
    /// </summary>
    public ImmutableArray<int>? Bridge(ATNState state, RuleContext context, int kind, int most)
    {
        if (Blocks.IsBlock(context))
        {
            return null;
        }

        _staysInSentence = true;
        Start(state, context);
        _staysInSentence = false;
        var layer = _places.ConvertAll(place => (Place: place, Missing: ImmutableArray<int>.Empty));
        for (var length = 0; length <= most; length++)
        {
            var further = new List<(Place, ImmutableArray<int>)>();
            _reached.Clear();
            foreach (var (place, missing) in layer)
            {
                for (var i = 0; i < place.State.NumberOfTransitions; i++)
                {
                    var transition = place.State.Transition(i);
                    if (transition.IsEpsilon)
                    {
                        continue;
                    }

                    if (transition.Matches(kind, 0, atn.maxTokenType))
                    {
                        return missing;
                    }

                    _next.Clear();
                    _staysInSentence = true;
                    Spread(place with { State = transition.target }, _next);
                    _staysInSentence = false;
                    further.AddRange(_next.Select(next => (next, missing.Add(Representative(transition)))));
                }
            }

            layer = further;
        }

        return null;
    }

    /// <summary>All tokens that may come behind the given ones.</summary>
    public SortedSet<int> Expected(ATNState state, RuleContext? context, ReadOnlySpan<int> kinds)
    {
        Reach(state, context, kinds);
        var expected = new SortedSet<int>();
        foreach (var place in _places)
        {
            for (var i = 0; i < place.State.NumberOfTransitions; i++)
            {
                foreach (var interval in place.State.Transition(i).Label?.GetIntervals() ?? [])
                {
                    for (var kind = interval.a; kind <= interval.b; kind++)
                    {
                        expected.Add(kind);
                    }
                }
            }
        }

        return expected;
    }

    /// <summary>Whether the tokens are the start of a sentence of the rule, or a whole one and more.</summary>
    public bool Fits(int rule, ReadOnlySpan<int> kinds) =>
        Reach(atn.ruleToStartState[rule], null, kinds) == kinds.Length || _ended;

    /// <summary>How many of the tokens the grammar takes, one after the other, before it takes one no more.</summary>
    public int Reach(ATNState state, RuleContext? context, ReadOnlySpan<int> kinds)
    {
        Start(state, context);
        for (var taken = 0; taken < kinds.Length; taken++)
        {
            _next.Clear();
            _reached.Clear();
            foreach (ref readonly var place in CollectionsMarshal.AsSpan(_places))
            {
                for (var i = 0; i < place.State.NumberOfTransitions; i++)
                {
                    var transition = place.State.Transition(i);
                    if (!transition.IsEpsilon && transition.Matches(kinds[taken], 0, atn.maxTokenType))
                    {
                        Spread(place with { State = transition.target }, _next);
                    }
                }
            }

            if (_next.Count == 0)
            {
                return taken;
            }

            (_places, _next) = (_next, _places);
        }

        return kinds.Length;
    }

    private void Start(ATNState state, RuleContext? context)
    {
        _places.Clear();
        _reached.Clear();
        _ended = false;
        Spread(new Place(state, null, context), _places);
    }

    private static int Representative(Transition transition) =>
        transition.Label.Contains(ProcScriptParser.NAME) ? ProcScriptParser.NAME : transition.Label.MinElement;

    private void Spread(Place place, List<Place> into)
    {
        if (!_reached.Add(place))
        {
            return;
        }

        if (place.State is RuleStopState)
        {
            if (place.Return is { } follow)
            {
                Spread(place with { State = follow.State, Return = follow.Return }, into);
            }
            else if (place.Outer is { invokingState: >= 0 } outer && !(_staysInSentence && Blocks.IsSentence(outer.RuleIndex)))
            {
                Spread(new Place(After(outer), null, outer.Parent), into);
            }
            else
            {
                _ended = true;
            }

            return;
        }

        var waits = false;
        for (var i = 0; i < place.State.NumberOfTransitions; i++)
        {
            var transition = place.State.Transition(i);
            switch (transition)
            {
                case RuleTransition rule:
                    Spread(place with { State = rule.target, Return = new Follow(rule.followState, place.Return) }, into);
                    break;
                case { IsEpsilon: true }:
                    Spread(place with { State = transition.target }, into);
                    break;
                default:
                    waits = true;
                    break;
            }
        }

        if (waits)
        {
            into.Add(place);
        }
    }

    private ATNState After(RuleContext context) => ((RuleTransition)atn.states[context.invokingState].Transition(0)).followState;

    // Where the grammar stands: a state, the states to go on with in the rules entered since, and the parser's own rules around.
    private readonly record struct Place(ATNState State, Follow? Return, RuleContext? Outer);

    private sealed record Follow(ATNState State, Follow? Return);
}
