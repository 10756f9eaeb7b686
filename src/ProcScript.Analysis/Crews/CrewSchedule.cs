using System.Collections.Immutable;

namespace ProcScript.Analysis.Crews;

/// <summary>When each task of a problem starts, and who does it.</summary>
/// <param name="Starts">The starts, by task.</param>
/// <param name="People">The people whom each task takes, in order, counted from 0; those who stand clear are not among them.</param>
public sealed record CrewSchedule(ImmutableArray<long> Starts, ImmutableArray<ImmutableArray<int>> People)
{
    /// <summary>Whether no schedule of the problem ends earlier.</summary>
    public bool IsOptimal { get; init; }

    /// <summary>A time before which no schedule of the problem ends.</summary>
    public long Least { get; init; }

    /// <summary>A schedule with such starts; who does what is chosen where it was not.</summary>
    /// <param name="problem">The problem, which has enough people for it at every moment.</param>
    /// <param name="starts">The starts.</param>
    /// <param name="people">The people of each task; null where they were only counted.</param>
    public static CrewSchedule With(CrewProblem problem, IReadOnlyList<long> starts, int[][]? people) =>
        new([.. starts], CrewAssignment.Of(problem, starts, people));

    /// <summary>When the last effect is there.</summary>
    public long End(CrewProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var end = 0L;
        for (var task = 0; task < Starts.Length; task++)
        {
            end = Math.Max(end, Starts[task] + problem.Tasks[task].Duration);
        }

        return end;
    }

    /// <summary>The tasks in the order of their starts; of those that start together, as the problem lists them.</summary>
    public ImmutableArray<int> Order() => [.. Enumerable.Range(0, Starts.Length).OrderBy(task => Starts[task])];

    /// <summary>
    /// The same schedule for a problem whose tasks take other times: everybody does the same in the same order, and starts once all is done that
    /// came before. Where no task takes longer, nothing starts later, so it never ends later: the anomalies of list scheduling (R. L. Graham, 1969)
    /// come from choosing anew whenever somebody is free, and people who keep to a plan do not.
    /// </summary>
    /// <param name="problem">The problem that this is a schedule of.</param>
    /// <param name="now">The same with other times, or with less that has to wait.</param>
    public CrewSchedule Kept(CrewProblem problem, CrewProblem now)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(now);
        var order = Order();
        var starts = new long[Starts.Length];
        var lags = now.Lags().ToLookup(lag => lag.Later);
        for (var place = 0; place < order.Length; place++)
        {
            var task = order[place];
            foreach (var lag in lags[task])
            {
                starts[task] = Math.Max(starts[task], starts[lag.Earlier] + lag.Least);
            }

            foreach (var earlier in order.AsSpan(..place))
            {
                var letsGo = Starts[earlier] + problem.Tasks[earlier].Attended <= Starts[task];
                if (letsGo && (SharePeople(problem, earlier, task) || ShareUse(problem, earlier, task)))
                {
                    starts[task] = Math.Max(starts[task], starts[earlier] + now.Tasks[earlier].Attended);
                }
            }
        }

        return new CrewSchedule([.. starts], People);
    }

    private bool SharePeople(CrewProblem problem, int one, int other)
    {
        var (mine, theirs) = (problem.Tasks[one], problem.Tasks[other]);
        return (mine.StandClear && problem.HandsOf(other) > 0)
            || (theirs.StandClear && problem.HandsOf(one) > 0)
            || People[one].Any(person => People[other].Contains(person));
    }

    private static bool ShareUse(CrewProblem problem, int one, int other) =>
        problem.Tasks[one].Uses.Any(use => problem.Tasks[other].Uses.Any(also => also.Resource == use.Resource));
}
