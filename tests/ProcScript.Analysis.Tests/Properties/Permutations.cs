using System.Numerics;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>Tries all orders of a few moves.</summary>
internal static class Permutations
{
    /// <summary>How many orders work, given whether a beginning does.</summary>
    public static BigInteger? Count(IReadOnlyList<Move> moves, Func<IReadOnlyList<Move>, bool> works) =>
        Working(moves, works).Count();

    /// <summary>The orders that work.</summary>
    public static IEnumerable<IReadOnlyList<Move>> Working(IReadOnlyList<Move> moves, Func<IReadOnlyList<Move>, bool> works) =>
        Extend([], moves, works);

    private static IEnumerable<IReadOnlyList<Move>> Extend(
        IReadOnlyList<Move> begun,
        IReadOnlyList<Move> left,
        Func<IReadOnlyList<Move>, bool> works)
    {
        if (left.Count == 0)
        {
            return [begun];
        }

        return from i in Enumerable.Range(0, left.Count)
               let longer = (IReadOnlyList<Move>)[.. begun, left[i]]
               where works(longer)
               from order in Extend(longer, [.. left.Take(i), .. left.Skip(i + 1)], works)
               select order;
    }
}
