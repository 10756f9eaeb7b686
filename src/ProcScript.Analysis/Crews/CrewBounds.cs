namespace ProcScript.Analysis.Crews;

/// <summary>What no schedule is quicker than.</summary>
public static class CrewBounds
{
    /// <summary>The longest chain of work of which each waits for the one before: no number of people is quicker.</summary>
    public static long CriticalPath(CrewProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var tails = Tails(problem);
        return tails.Length == 0 ? 0 : tails.Max();
    }

    /// <summary>The work of all hands, and the use of everything else, shared out evenly over what there is, rounded up.</summary>
    public static long Shares(CrewProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var hands = 0L;
        var uses = new long[problem.Capacities.Length];
        for (var task = 0; task < problem.Tasks.Length; task++)
        {
            var attended = problem.Tasks[task].Attended;
            hands += attended * problem.HandsOf(task);
            foreach (var use in problem.Tasks[task].Uses)
            {
                uses[use.Resource] += attended * use.Amount;
            }
        }

        return uses.Select((used, resource) => Share(used, problem.Capacities[resource])).Append(Share(hands, problem.People)).Max();
    }

    /// <summary>The greater of the two, of each piece by itself where a problem falls into several that come one after the other.</summary>
    public static long Least(CrewProblem problem) => CrewSegments.Of(problem).Sum(piece => Math.Max(CriticalPath(piece.Problem), Shares(piece.Problem)));

    /// <summary>Of each task the longest chain that begins with it.</summary>
    internal static long[] Tails(CrewProblem problem)
    {
        // A task's tail is final once all have been seen that wait for it, and those stand behind it.
        var tails = new long[problem.Tasks.Length];
        for (var task = tails.Length - 1; task >= 0; task--)
        {
            var one = problem.Tasks[task];
            tails[task] = Math.Max(tails[task], one.Duration);
            foreach (var earlier in one.After)
            {
                tails[earlier] = Math.Max(tails[earlier], problem.Tasks[earlier].Duration + tails[task]);
            }

            foreach (var earlier in one.AfterHandsOf)
            {
                tails[earlier] = Math.Max(tails[earlier], problem.Tasks[earlier].Attended + tails[task]);
            }
        }

        return tails;
    }

    private static long Share(long used, int there) => there == 0 ? 0 : (used + there - 1) / there;
}
