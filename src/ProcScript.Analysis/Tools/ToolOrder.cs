using System.Collections.Immutable;
using System.Numerics;

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
/// <para>
/// <b>Limit.</b> A piece that takes several tools is better left at times, to take them all up once more for pieces that take fewer of
/// them and open later. The search never leaves a piece, so there it can count one change more than the least.
/// </para>
/// </summary>
internal sealed class ToolOrder
{
    /// <summary>Beyond this many pieces nobody wants to hear of another order.</summary>
    public const int MostPieces = 40;

    /// <summary>So many sets of finished work are searched before the search gives way to taking what gets most done.</summary>
    public const int MostStates = 2_000;

    private readonly ImmutableArray<ToolWork> _pieces;
    private readonly ulong[] _doable;
    private readonly ulong _all;

    private ToolOrder(ImmutableArray<ToolWork> pieces)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(pieces.Length, MostPieces);
        _pieces = pieces;
        _doable = new ulong[pieces.Length];
        for (var piece = 0; piece < pieces.Length; piece++)
        {
            _doable[piece] = DoableWith(pieces[piece].Tools);
        }

        _all = (1UL << pieces.Length) - 1;
    }

    /// <summary>The order, as indices.</summary>
    /// <param name="pieces">The pieces; what goes before one has a lower index.</param>
    /// <param name="inHand">The tools in hand at the start; null where none is.</param>
    public static ImmutableArray<int> Find(ImmutableArray<ToolWork> pieces, ImmutableArray<string>? inHand) =>
        new ToolOrder(pieces).Search(inHand ?? []);

    private ImmutableArray<int> Search(ImmutableArray<string> inHand)
    {
        var start = new State(Finished(0, DoableWith(inHand)), 0, null);
        if (start.Done == _all)
        {
            return Order(start);
        }

        var seen = new HashSet<ulong> { start.Done };
        List<State> level = [start];
        while (true)
        {
            List<State> next = [];
            foreach (var state in level)
            {
                foreach (var reached in Choices(state))
                {
                    if (reached.Done == _all)
                    {
                        return Order(reached);
                    }

                    if (seen.Add(reached.Done))
                    {
                        next.Add(reached);
                    }
                }

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
            state = Choices(state).MaxBy(reached => ulong.PopCount(reached.Done))!;
        }

        return state;
    }

    /// <summary>What comes of taking up the tools for each of the pieces that are possible now.</summary>
    private IEnumerable<State> Choices(State from)
    {
        for (var piece = 0; piece < _pieces.Length; piece++)
        {
            if (IsOpen(piece, from.Done))
            {
                yield return new State(Finished(from.Done | (1UL << piece), _doable[piece]), 1UL << piece, from);
            }
        }
    }

    private bool IsOpen(int piece, ulong done) => (done & (1UL << piece)) == 0 && (_pieces[piece].Before & ~done) == 0;

    /// <summary>The pieces that need no other tools than these, a bit each.</summary>
    private ulong DoableWith(ImmutableArray<string> tools)
    {
        var doable = 0UL;
        for (var piece = 0; piece < _pieces.Length; piece++)
        {
            doable |= ToolChanges.Suffice(tools, _pieces[piece].Tools) ? 1UL << piece : 0;
        }

        return doable;
    }

    /// <summary>What is done once all has been done that tools suffice for: one pass, for nothing waits for a later piece.</summary>
    private ulong Finished(ulong done, ulong doable)
    {
        for (var piece = 0; piece < _pieces.Length; piece++)
        {
            if ((doable & (1UL << piece)) != 0 && IsOpen(piece, done))
            {
                done |= 1UL << piece;
            }
        }

        return done;
    }

    private ImmutableArray<int> Order(State end)
    {
        var states = new Stack<State>();
        for (State? state = end; state is not null; state = state.From)
        {
            states.Push(state);
        }

        var order = ImmutableArray.CreateBuilder<int>(_pieces.Length);
        foreach (var state in states)
        {
            Add(order, state.First);
            Add(order, state.Done & ~state.First & ~(state.From?.Done ?? 0));
        }

        return order.MoveToImmutable();
    }

    private static void Add(ImmutableArray<int>.Builder order, ulong pieces)
    {
        for (; pieces != 0; pieces &= pieces - 1)
        {
            order.Add(BitOperations.TrailingZeroCount(pieces));
        }
    }

    /// <summary>A set of finished work.</summary>
    /// <param name="Done">What is done, a bit for each piece.</param>
    /// <param name="First">The piece of it that the tools were taken up for, as its bit; 0 where they were in hand.</param>
    /// <param name="From">What was done before they were taken up.</param>
    private sealed record State(ulong Done, ulong First, State? From);
}

/// <summary>A piece of work that is done without a break.</summary>
/// <param name="Tools">The tools that it takes; none for bare hands.</param>
/// <param name="Before">The pieces that must go before it, a bit for each index; all lower than its own.</param>
internal readonly record struct ToolWork(ImmutableArray<string> Tools, ulong Before);
