namespace ProcScript.Analysis.Crews;

/// <summary>
/// Schedules by lists: from a few good lists, and then by small changes of the best one. Each schedule is pushed to its end and back to its
/// beginning, which closes gaps (P. Tormos, A. Lova, 2001). It draws its changes from a fixed row of numbers and stops after so much work, so that
/// the same problem has the same schedule everywhere; and it stops at once where a bound shows that nothing is better. A schedule of fewer people
/// is one of more people too, and is kept where more people do not do better.
/// </summary>
/// <param name="effort">How many tasks are placed in all, about, for each number of people.</param>
public sealed class ListScheduler(int effort = ListScheduler.UsualEffort) : ICrewScheduler
{
    /// <summary>The usual effort: well below a second on any machine.</summary>
    public const int UsualEffort = 150_000;

    private const int LeastSchedules = 8;

    /// <inheritdoc/>
    public CrewSchedule Schedule(CrewProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        long[]? best = null;
        int[][]? who = null;
        var end = long.MaxValue;
        for (var people = 1; people <= problem.People; people++)
        {
            if (people < problem.People && !problem.For(people).IsAsGoodAs(problem))
            {
                // Fewer people without somebody who holds what is asked for do it as nobody may here.
                continue;
            }

            var search = new ListSearch(problem.For(people), Math.Max(LeastSchedules, effort / Math.Max(1, problem.Tasks.Length)));
            search.Run(best);
            if (search.End < end)
            {
                (best, end) = (search.Starts, search.End);
                // Who does what in a schedule of fewer people stays so: those who were not counted then need not be certified.
                who = problem.AsksWho ? [.. CrewAssignment.Of(problem.For(people), best, search.Who).Select(some => some.ToArray())] : null;
            }
        }

        var least = CrewBounds.Least(problem);
        return CrewSchedule.With(problem, best!, who) with { IsOptimal = end <= least, Least = least };
    }
}
