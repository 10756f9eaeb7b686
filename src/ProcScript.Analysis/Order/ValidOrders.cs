using System.Collections.Immutable;
using System.Numerics;
using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Order;

/// <summary>Counts in how many orders a run could be worked: the linear extensions of what must go before what.</summary>
public static class ValidOrders
{
    /// <summary>The most sets of finished actions that are looked at in one knot of actions that hang together.</summary>
    public const int MostSets = 1_000_000;

    /// <summary>The most actions that may hang together: a bit each.</summary>
    public const int MostActions = 128;

    /// <summary>The number of valid orders of a strip; null where they are too many to count.</summary>
    public static BigInteger? Of(StripRun strip) => Count(strip.Actions, strip.Order);

    /// <summary>The number of valid orders of a refit; null where they are too many to count.</summary>
    public static BigInteger? Of(RefitRun refit) => Count(refit.Actions, refit.Order);

    private static BigInteger? Count(ImmutableArray<PerformedAction> actions, ImmutableArray<OrderEdge> order)
    {
        var first = actions.IsEmpty ? 0 : actions[0].Number;
        return Count(actions.Length, order.Select(edge => (edge.Earlier - first, edge.Later - first)));
    }

    /// <summary>
    /// The number of orders of <paramref name="count"/> actions, named 0 and up, that keep every pair in order. Actions that do not hang
    /// together are counted apart and interleaved. Null where they are too many to count; 0 where the pairs make a circle.
    /// </summary>
    public static BigInteger? Count(int count, IEnumerable<(int Earlier, int Later)> pairs)
    {
        var (orders, placed) = (BigInteger.One, 0);
        foreach (var component in Components(count, pairs))
        {
            if (CountTogether(component) is not { } together)
            {
                return null;
            }

            for (var i = 1; i <= component.Length; i++)
            {
                orders = orders * ++placed / i;
            }

            orders *= together;
        }

        return orders;
    }

    /// <summary>The actions that hang together, each with those of the same component that go before it, by their places in it.</summary>
    private static IEnumerable<int[][]> Components(int count, IEnumerable<(int Earlier, int Later)> pairs)
    {
        var neighbours = new List<int>[count];
        var before = new List<int>[count];
        for (var i = 0; i < count; i++)
        {
            (neighbours[i], before[i]) = ([], []);
        }

        foreach (var (earlier, later) in pairs)
        {
            neighbours[earlier].Add(later);
            neighbours[later].Add(earlier);
            before[later].Add(earlier);
        }

        var place = new int[count];
        Array.Fill(place, -1);
        for (var start = 0; start < count; start++)
        {
            if (place[start] < 0)
            {
                var members = new List<int>();
                Gather(start, neighbours, place, members);
                yield return [.. members.Select(member => before[member].Select(earlier => place[earlier]).ToArray())];
            }
        }
    }

    private static void Gather(int start, List<int>[] neighbours, int[] place, List<int> members)
    {
        place[start] = 0;
        members.Add(start);
        for (var i = 0; i < members.Count; i++)
        {
            foreach (var neighbour in neighbours[members[i]])
            {
                if (place[neighbour] < 0)
                {
                    place[neighbour] = members.Count;
                    members.Add(neighbour);
                }
            }
        }
    }

    /// <summary>Counts by sets of finished actions: the ways to a set are the ways to the sets with one action fewer.</summary>
    private static BigInteger? CountTogether(int[][] before)
    {
        if (before.Length > MostActions)
        {
            return null;
        }

        var needed = Array.ConvertAll(before, earlier => earlier.Aggregate(UInt128.Zero, (set, action) => set | (UInt128.One << action)));
        var ways = new Dictionary<UInt128, BigInteger> { [UInt128.Zero] = BigInteger.One };
        var seen = 1;
        for (var size = 0; size < before.Length; size++)
        {
            var larger = new Dictionary<UInt128, BigInteger>();
            foreach (var (done, count) in ways)
            {
                for (var action = 0; action < before.Length; action++)
                {
                    var bit = UInt128.One << action;
                    if ((done & bit) == 0 && (needed[action] & ~done) == 0)
                    {
                        larger[done | bit] = larger.GetValueOrDefault(done | bit) + count;
                    }
                }
            }

            seen += larger.Count;
            if (seen > MostSets)
            {
                return null;
            }

            ways = larger;
        }

        return ways.Count == 0 ? BigInteger.Zero : ways.Values.Single();
    }
}
