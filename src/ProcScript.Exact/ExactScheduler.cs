using Google.OrTools.Sat;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact;

/// <summary>
/// Schedules by constraint programming and proves that nothing is shorter. It works with one thread, a fixed seed and a limit on its own count of work
/// instead of the clock, so that the same problem has the same schedule everywhere.
/// </summary>
/// <param name="effort">The most work, in the solver's deterministic seconds.</param>
public sealed class ExactScheduler(double effort = ExactScheduler.UsualEffort) : ICrewScheduler
{
    /// <summary>The usual limit: well below a minute.</summary>
    public const double UsualEffort = 20;

    /// <inheritdoc/>
    public CrewSchedule Schedule(CrewProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var known = new ListScheduler().Schedule(problem);
        return known.IsOptimal || problem.Tasks.IsEmpty ? known : Better(problem, known);
    }

    private CrewSchedule Better(CrewProblem problem, CrewSchedule known)
    {
        ScheduleModel model = new(problem, known);
        using CpSolver solver = new();
        solver.StringParameters = FormattableString.Invariant($"num_workers:1,random_seed:1,max_deterministic_time:{effort}");
        var status = solver.Solve(model.Model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            return known;
        }

        // A bound of the solver's is a whole time, told as a number with a fraction.
        var least = Math.Max(known.Least, (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6));
        var found = model.Read(solver);
        var best = found.End(problem) < known.End(problem) ? found : known;
        return best with { IsOptimal = best.End(problem) <= least, Least = least };
    }
}
