using System.Collections.Immutable;

namespace ProcScript.Analysis.Tools;

/// <summary>
/// Finds an order of a few pieces of work, within what must go before what, that changes tools seldom.
/// <para>
/// <b>Method.</b> Whatever can be done with the tools in hand is done at once: that never costs a change now or later, for it only makes
/// more of the rest possible and leaves the hand as it is. So all that has to be chosen is which tools to take up next, and all that a
/// choice depends on is the set of what is done. A breadth-first search over these sets, a level a change, finds the least count
/// exactly. Once it has met <see cref="MostStates"/> sets it goes on from the one that has most done, always with the tools that get
/// most done: then the order is good and not proven to be the best.
/// </para>
/// </summary>
internal sealed class ToolOrder
{
    /// <summary>Beyond this many pieces nobody wants to hear of another order.</summary>
    public const int MostPieces = 40;

    /// <summary>So many sets of finished work are searched before the search gives way to taking what gets most done.</summary>
    public const int MostStates = 2_000;

    private readonly ImmutableArray<ToolWork> _pieces;
    private readonly ulong[] _before;
    private readonly ulong _all;

    private ToolOrder(ImmutableArray<ToolWork> pieces)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(pieces.Length, MostPieces);
        _pieces = pieces;
        _before = [.. pieces.Select(piece => piece.Before.Aggregate(0UL, (set, before) => set | (1UL << before)))];
        _all = (1UL << pieces.Length) - 1;
    }

    /// <summary>The order, as indices.</summary>
    /// <param name="pieces">The pieces; what goes before one has a lower index.</param>
    /// <param name="inHand">The tools in hand at the start; null where none is.</param>
    public static ImmutableArray<int> Find(ImmutableArray<ToolWork> pieces, ImmutableHashSet<string>? inHand) =>
        new ToolOrder(pieces).Search(inHand ?? []);

    private ImmutableArray<int> Search(ImmutableHashSet<string> inHand)
    {
        var start = Work(null, -1, inHand);
        var seen = new HashSet<ulong> { start.Done };
        List<State> level = [start];
        while (true)
        {
            if (level.Find(state => state.Done == _all) is { } end)
            {
                return Order(end);
            }

            List<State> next = [];
            foreach (var state in level)
            {
                next.AddRange(Choices(state).Select(piece => Work(state, piece, _pieces[piece].Tools)).Where(reached => seen.Add(reached.Done)));
                if (seen.Count > MostStates)
                {
                    return Order(Finish(next.Concat(level).MaxBy(reached => ulong.PopCount(reached.Done))!));
                }
            }

            level = next;
        }
    }

    private State Finish(State state)
    {
        while (state.Done != _all)
        {
            var from = state;
            state = Choices(from).Select(piece => Work(from, piece, _pieces[piece].Tools)).MaxBy(reached => ulong.PopCount(reached.Done))!;
        }

        return state;
    }

    /// <summary>The pieces that tools can be taken up for next.</summary>
    private IEnumerable<int> Choices(State state) => Enumerable.Range(0, _pieces.Length).Where(piece => IsOpen(piece, state.Done));

    private bool IsOpen(int piece, ulong done) => (done & (1UL << piece)) == 0 && (_before[piece] & ~done) == 0;

    /// <summary>Takes up tools for a piece, does that, and then all else that can be done with them.</summary>
    private State Work(State? from, int first, ImmutableHashSet<string> tools)
    {
        var done = from?.Done ?? 0;
        var order = ImmutableArray.CreateBuilder<int>();
        if (first >= 0)
        {
            done |= 1UL << first;
            order.Add(first);
        }

        for (var piece = 0; piece < _pieces.Length; piece++)
        {
            if (IsOpen(piece, done) && _pieces[piece].Tools.IsSubsetOf(tools))
            {
                done |= 1UL << piece;
                order.Add(piece);
            }
        }

        return new State(done, order.ToImmutable(), from);
    }

    private static ImmutableArray<int> Order(State end)
    {
        var stretches = new Stack<ImmutableArray<int>>();
        for (State? state = end; state is not null; state = state.From)
        {
            stretches.Push(state.Order);
        }

        return [.. stretches.SelectMany(stretch => stretch)];
    }

    private sealed record State(ulong Done, ImmutableArray<int> Order, State? From);
}

/// <summary>A piece of work that is done without a break.</summary>
/// <param name="Tools">The tools that it takes; none for bare hands.</param>
/// <param name="Before">The indices of the pieces that must go before it; all lower than its own.</param>
internal readonly record struct ToolWork(ImmutableHashSet<string> Tools, ImmutableArray<int> Before);
