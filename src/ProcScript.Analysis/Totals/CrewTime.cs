using System.Collections.Immutable;

namespace ProcScript.Analysis.Totals;

/// <summary>The time of a job for a crew: the best of a few list schedules, so that more people never report a longer job.</summary>
internal static class CrewTime
{
    /// <summary>
    /// The least makespan over crews of one up to <paramref name="crew"/> (somebody may stand by) and two lists: the order given,
    /// and the longest way to the end first. <paramref name="tasks"/> are in an order that respects their predecessors.
    /// </summary>
    public static double Least(ImmutableArray<CrewTask> tasks, int crew)
    {
        var given = new int[tasks.Length];
        for (var task = 0; task < given.Length; task++)
        {
            given[task] = task;
        }

        var longestFirst = ByLongestTail(tasks);
        var least = double.PositiveInfinity;
        for (var people = 1; people <= crew; people++)
        {
            least = Math.Min(least, ListSchedule.Makespan(tasks, people, given));
            least = Math.Min(least, ListSchedule.Makespan(tasks, people, longestFirst));
        }

        return least;
    }

    /// <summary>Ranks the tasks by the longest chain of work that hangs on them, the longest first, ties in the order given.</summary>
    private static int[] ByLongestTail(ImmutableArray<CrewTask> tasks)
    {
        // A task's tail is final once all its successors have been seen, and those stand behind it.
        var tail = new double[tasks.Length];
        for (var task = tasks.Length - 1; task >= 0; task--)
        {
            tail[task] = Math.Max(tail[task], tasks[task].Duration);
            foreach (var before in tasks[task].After)
            {
                tail[before] = Math.Max(tail[before], tasks[before].Duration + tail[task]);
            }

            foreach (var before in tasks[task].AfterHandsOf)
            {
                tail[before] = Math.Max(tail[before], tasks[before].Attended + tail[task]);
            }
        }

        var order = Enumerable.Range(0, tasks.Length).OrderByDescending(task => tail[task]).ToArray();
        var rank = new int[tasks.Length];
        for (var place = 0; place < order.Length; place++)
        {
            rank[order[place]] = place;
        }

        return rank;
    }
}
