using System.Collections.Immutable;

namespace ProcScript.Analysis.Crews;

/// <summary>
/// Says who does what in a schedule that has enough people at every moment. Somebody goes on with what he made ready himself; else he takes what he
/// took apart; else who is nearest by the cards does it.
/// </summary>
internal static class CrewAssignment
{
    /// <summary>The people of each task.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="starts">The starts.</param>
    /// <param name="chosen">Those whom the search has chosen already, where it matters who does what; else null.</param>
    public static ImmutableArray<ImmutableArray<int>> Of(CrewProblem problem, IReadOnlyList<long> starts, int[][]? chosen)
    {
        var people = new ImmutableArray<int>[starts.Count];
        var freeFrom = new long[problem.People];
        var lastTask = Enumerable.Repeat(-1, problem.People).ToArray();
        foreach (var task in Enumerable.Range(0, starts.Count).OrderBy(task => starts[task]))
        {
            var (one, hands) = (problem.Tasks[task], Math.Min(problem.Tasks[task].Hands, problem.People));
            var free = Enumerable.Range(0, problem.People).Where(person => freeFrom[person] <= starts[task] || one.Attended == 0);
            var known = chosen is null || one.StandClear || chosen[task].Length < hands ? free : chosen[task];
            var made = one.After.Concat(one.AfterHandsOf).ToHashSet();
            var halves = one.KnownFrom >= 0 && !people[one.KnownFrom].IsDefault ? people[one.KnownFrom] : [];
            var able = chosen is null ? [] : problem.Cover(known, problem.Asked(task), hands) ?? [];
            people[task] =
            [
                .. known.OrderByDescending(able.Contains)
                    .ThenByDescending(person => made.Contains(lastTask[person]))
                    .ThenByDescending(person => halves.Contains(person))
                    .ThenBy(person => lastTask[person] < 0 ? int.MaxValue : Math.Abs(task - lastTask[person]))
                    .ThenBy(person => person)
                    .Take(hands)
                    .Order(),
            ];
            foreach (var person in one.Attended == 0 ? [] : people[task])
            {
                (freeFrom[person], lastTask[person]) = (starts[task] + one.Attended, task);
            }
        }

        return [.. people];
    }
}
