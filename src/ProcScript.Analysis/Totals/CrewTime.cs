using System.Collections.Immutable;
using ProcScript.Analysis.Crews;

namespace ProcScript.Analysis.Totals;

/// <summary>The time of a job for a crew, at a guess: the best of a few list schedules, so that more people never report a longer job.</summary>
internal static class CrewTime
{
    /// <summary>
    /// The least end over crews of one up to <paramref name="crew"/> (somebody may stand by) and two lists: the order given,
    /// and the longest way to the end first. <paramref name="tasks"/> are in an order that respects their predecessors.
    /// </summary>
    public static long Least(ImmutableArray<CrewTask> tasks, int crew)
    {
        var problem = new CrewProblem(tasks, crew);
        long[] given = [.. Enumerable.Range(0, tasks.Length)];
        long[] longestFirst = [.. CrewBounds.Tails(problem).Select(tail => -tail)];
        return Enumerable.Range(1, crew).Min(people => Math.Min(End(problem.For(people), given), End(problem.For(people), longestFirst)));
    }

    private static long End(CrewProblem problem, long[] rank) =>
        ListRule.Starts(problem, rank).Select((start, task) => start + problem.Tasks[task].Duration).DefaultIfEmpty(0).Max();
}
