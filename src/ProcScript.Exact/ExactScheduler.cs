using Google.OrTools.Sat;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact;

/// <summary>
/// Schedules by constraint programming and proves that nothing is shorter. A job is cut where all before is over before anything behind begins, and each
/// piece is solved by itself. It works with one thread, a fixed seed and a limit on its own count of work instead of the clock, so that the same problem
/// has the same schedule everywhere; a limit in seconds of the clock, where somebody sets one, ends the search besides.
/// </summary>
/// <param name="effort">The most work for each piece, in the solver's deterministic seconds.</param>
/// <param name="seconds">The most time for all pieces, in seconds of the clock; null for no such limit.</param>
public sealed class ExactScheduler(double effort = ExactScheduler.UsualEffort, double? seconds = null) : ICrewScheduler
{
    /// <summary>The usual limit of work: about half a minute.</summary>
    public const double UsualEffort = 20;

    /// <inheritdoc/>
    public CrewSchedule Schedule(CrewProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var known = new ListScheduler().Schedule(problem);
        if (known.IsOptimal || problem.Tasks.IsEmpty)
        {
            return known;
        }

        var pieces = CrewSegments.Of(problem);
        var left = seconds;
        var solved = new List<(CrewProblem Problem, CrewSchedule Schedule)>();
        foreach (var (_, piece) in pieces)
        {
            var share = left / (pieces.Count - solved.Count);
            var start = pieces.Count == 1 ? known : new ListScheduler().Schedule(piece);
            var (found, took) = start.IsOptimal || piece.Tasks.IsEmpty ? (start, 0) : Better(piece, start, share);
            left -= took;
            solved.Add((piece, found));
        }

        var joined = CrewSegments.Join(problem, solved);
        // The lists may have found the whole shorter than its pieces where the search was ended early.
        return joined.End(problem) <= known.End(problem) ? joined : known with { Least = Math.Max(known.Least, joined.Least), IsOptimal = known.End(problem) <= joined.Least };
    }

    private (CrewSchedule Schedule, double Seconds) Better(CrewProblem problem, CrewSchedule known, double? share)
    {
        ScheduleModel model = new(problem, known);
        using CpSolver solver = new();
        solver.StringParameters = FormattableString.Invariant($"num_workers:1,random_seed:1,max_deterministic_time:{effort}")
            + (share is { } limit ? FormattableString.Invariant($",max_time_in_seconds:{Math.Max(0.01, limit)}") : "");
        var status = solver.Solve(model.Model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            return (known, solver.WallTime());
        }

        // A bound of the solver's is a whole time, told as a number with a fraction.
        var least = Math.Max(known.Least, model.Unit * (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6));
        var found = model.Read(solver);
        var best = found.End(problem) < known.End(problem) ? found : known;
        return (best with { IsOptimal = best.End(problem) <= least, Least = least }, solver.WallTime());
    }
}
