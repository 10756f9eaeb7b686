namespace ProcScript.Analysis.Crews;

/// <summary>What waits for what in a problem, seen from the beginning of the job or, in a mirror, from its end.</summary>
internal sealed class CrewNetwork
{
    private CrewNetwork(int count)
    {
        Releases = new long[count];
        Before = new List<(int Task, long Least)>[count];
        After = new List<int>[count];
        for (var task = 0; task < count; task++)
        {
            Before[task] = [];
            After[task] = [];
        }
    }

    /// <summary>When each task may start at the earliest, whatever the others do.</summary>
    public long[] Releases { get; }

    /// <summary>The tasks that each waits for, with the least time from start to start.</summary>
    public List<(int Task, long Least)>[] Before { get; }

    /// <summary>The tasks that wait for each.</summary>
    public List<int>[] After { get; }

    /// <summary>The problem as it is.</summary>
    public static CrewNetwork Forward(CrewProblem problem)
    {
        var network = new CrewNetwork(problem.Tasks.Length);
        foreach (var lag in problem.Lags())
        {
            network.Add(lag.Earlier, lag.Later, lag.Least);
        }

        return network;
    }

    /// <summary>
    /// The problem in the mirror: a task that lets its people go at t starts at (end - t). What comes after its people have gone stands before it.
    /// </summary>
    public static CrewNetwork Mirrored(CrewProblem problem)
    {
        var network = new CrewNetwork(problem.Tasks.Length);
        for (var task = 0; task < problem.Tasks.Length; task++)
        {
            network.Releases[task] = problem.Tasks[task].Duration - problem.Tasks[task].Attended;
        }

        foreach (var lag in problem.Lags())
        {
            network.Add(lag.Later, lag.Earlier, problem.Tasks[lag.Later].Attended - problem.Tasks[lag.Earlier].Attended + lag.Least);
        }

        return network;
    }

    /// <summary>The tasks in the order of a rank, each behind those that it waits for.</summary>
    public int[] Sorted(ReadOnlySpan<long> rank)
    {
        var missing = Before.Select(before => before.Count).ToArray();
        var ready = new PriorityQueue<int, (long Rank, int Task)>();
        for (var task = 0; task < missing.Length; task++)
        {
            if (missing[task] == 0)
            {
                ready.Enqueue(task, (rank[task], task));
            }
        }

        var order = new int[missing.Length];
        for (var place = 0; place < order.Length; place++)
        {
            order[place] = ready.Dequeue();
            foreach (var next in After[order[place]])
            {
                if (--missing[next] == 0)
                {
                    ready.Enqueue(next, (rank[next], next));
                }
            }
        }

        return order;
    }

    private void Add(int earlier, int later, long least)
    {
        Before[later].Add((earlier, least));
        After[earlier].Add(later);
    }
}
