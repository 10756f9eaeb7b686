namespace ProcScript.Analysis.Lifting;

/// <summary>
/// What several people may lift together. The NIOSH equation does not cover that; as a screening, a team of two counts for two thirds of
/// the sum of its members and a team of three for half of it (HSE guidance on manual handling; from memory). For larger teams nothing is
/// given; a half is kept.
/// </summary>
public static class TeamLift
{
    /// <summary>The largest team that the guidance speaks of; whatever is too heavy for it wants a hoist.</summary>
    public const int Most = 3;

    /// <summary>What a team may lift, in the unit of <paramref name="limit"/>.</summary>
    /// <param name="limit">What one of them may lift.</param>
    /// <param name="people">How many they are; one or more.</param>
    public static double Limit(double limit, int people)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(people, 1);
        return people switch
        {
            1 => limit,
            2 => limit * 2 * 2 / 3,
            _ => limit * people / 2,
        };
    }

    /// <summary>The smallest team for a load; null where no team of the guidance may lift it.</summary>
    /// <param name="load">The load.</param>
    /// <param name="limit">What one person may lift, in the same unit.</param>
    public static int? LeastFor(double load, double limit)
    {
        for (var people = 1; people <= Most; people++)
        {
            if (load <= Limit(limit, people))
            {
                return people;
            }
        }

        return null;
    }
}
