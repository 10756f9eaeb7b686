using ProcScript.Analysis.Crews;

namespace ProcScript.Analysis.Totals;

/// <summary>The time of a job for a crew, at a guess: the best of a few list schedules, so that more people never report a longer job.</summary>
internal static class CrewTime
{
    /// <summary>
    /// The least end over crews of one up to all that there are (somebody may stand by) and two lists: the order given, and the longest way to
    /// the end first. The tasks of <paramref name="problem"/> are in an order that respects their predecessors.
    /// </summary>
    public static long Least(CrewProblem problem)
    {
        long[] given = [.. Enumerable.Range(0, problem.Tasks.Length)];
        long[] longestFirst = [.. CrewBounds.Tails(problem).Select(tail => -tail)];
        return Enumerable.Range(1, problem.People).Min(people => Math.Min(End(problem.For(people), given), End(problem.For(people), longestFirst)));
    }

    private static long End(CrewProblem problem, long[] rank) =>
        ListRule.Starts(problem, rank).Select((start, task) => start + problem.Tasks[task].Duration).DefaultIfEmpty(0).Max();
}
