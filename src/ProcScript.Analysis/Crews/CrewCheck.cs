namespace ProcScript.Analysis.Crews;

/// <summary>Holds a schedule to its problem, whoever made it: knows nothing of how it was found.</summary>
public static class CrewCheck
{
    /// <summary>What the schedule breaks, one sentence each; nothing where it keeps to all of the problem.</summary>
    public static IEnumerable<string> Failures(CrewProblem problem, CrewSchedule schedule)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(schedule);
        return schedule.Starts.Length != problem.Tasks.Length || schedule.People.Length != problem.Tasks.Length
            ? ["It has another number of tasks."]
            : [.. Waits(problem, schedule), .. People(problem, schedule), .. Uses(problem, schedule)];
    }

    /// <summary>What is wrong with a problem itself, so that it has no schedule; nothing where it is one.</summary>
    public static IEnumerable<string> Faults(CrewProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        if (problem.People < 1)
        {
            yield return "There is nobody to do it.";
        }

        if (problem.Tasks.IsDefault || problem.Capacities.IsDefault || problem.Tasks.Any(task => task.After.IsDefault || task.AfterHandsOf.IsDefault || task.Uses.IsDefault || task.Certificates.IsDefault)
            || problem.Holders.IsDefault || problem.Holders.Any(holders => holders.IsDefault))
        {
            yield return "Some of its lists are missing.";
            yield break;
        }

        for (var task = 0; task < problem.Tasks.Length; task++)
        {
            var one = problem.Tasks[task];
            if (one.Attended < 0 || one.Duration < one.Attended || one.Hands < 0)
            {
                yield return $"Task {task} has impossible times or hands.";
            }

            if (one.After.Concat(one.AfterHandsOf).Any(earlier => earlier < 0 || earlier >= task))
            {
                yield return $"Task {task} waits for one that does not stand before it.";
            }

            if (one.Certificates.Any(certificate => certificate < 0 || certificate >= problem.Holders.Length))
            {
                yield return $"Task {task} asks for a certificate that does not exist.";
            }

            if (one.Uses.Any(use => use.Amount < 0 || use.Resource < 0 || use.Resource >= problem.Capacities.Length || use.Amount > problem.Capacities[use.Resource]))
            {
                yield return $"Task {task} uses more than there is.";
            }
        }
    }

    private static IEnumerable<string> Waits(CrewProblem problem, CrewSchedule schedule)
    {
        foreach (var lag in problem.Lags())
        {
            if (schedule.Starts[lag.Later] < schedule.Starts[lag.Earlier] + lag.Least)
            {
                yield return $"Task {lag.Later} does not wait for task {lag.Earlier}.";
            }
        }

        for (var task = 0; task < problem.Tasks.Length; task++)
        {
            if (schedule.Starts[task] < 0)
            {
                yield return $"Task {task} starts before the job.";
            }
        }
    }

    private static IEnumerable<string> People(CrewProblem problem, CrewSchedule schedule)
    {
        for (var task = 0; task < problem.Tasks.Length; task++)
        {
            var (one, people) = (problem.Tasks[task], schedule.People[task]);
            if (people.Distinct().Count() != Math.Min(one.Hands, problem.People) || people.Any(person => person < 0 || person >= problem.People))
            {
                yield return $"Task {task} has not the people that it takes.";
            }

            foreach (var certificate in problem.Asked(task).Where(one => !people.Any(person => problem.Holds(person, one))))
            {
                yield return $"Task {task} has nobody who holds certificate {certificate}.";
            }

            for (var other = 0; other < task; other++)
            {
                var together = Overlap(problem, schedule, task, other);
                if (together && people.Any(person => schedule.People[other].Contains(person)))
                {
                    yield return $"Somebody does task {task} and task {other} at once.";
                }

                if (together && (one.StandClear || problem.Tasks[other].StandClear) && problem.HandsOf(task) > 0 && problem.HandsOf(other) > 0)
                {
                    yield return $"Nobody may work beside task {(one.StandClear ? task : other)}, and task {(one.StandClear ? other : task)} goes on.";
                }
            }
        }
    }

    /// <summary>No use is over what there is at any start, and between two starts no use grows.</summary>
    private static IEnumerable<string> Uses(CrewProblem problem, CrewSchedule schedule)
    {
        for (var resource = 0; resource < problem.Capacities.Length; resource++)
        {
            foreach (var moment in schedule.Starts.Distinct())
            {
                var used = Enumerable.Range(0, problem.Tasks.Length)
                    .Where(task => schedule.Starts[task] <= moment && moment < schedule.Starts[task] + problem.Tasks[task].Attended)
                    .Sum(task => problem.Tasks[task].Uses.Where(use => use.Resource == resource).Sum(use => use.Amount));
                if (used > problem.Capacities[resource])
                {
                    yield return $"At {moment} {used} of resource {resource} are used, and there are {problem.Capacities[resource]}.";
                }
            }
        }
    }

    private static bool Overlap(CrewProblem problem, CrewSchedule schedule, int one, int other) =>
        schedule.Starts[one] < schedule.Starts[other] + problem.Tasks[other].Attended
        && schedule.Starts[other] < schedule.Starts[one] + problem.Tasks[one].Attended
        && problem.Tasks[one].Attended > 0
        && problem.Tasks[other].Attended > 0;
}
