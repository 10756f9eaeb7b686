using System.Collections.Immutable;

namespace ProcScript.Analysis.Crews;

/// <summary>
/// Cuts a problem where all before is over before anything behind begins: at the end of the strip, of the work, at a pause. Each piece is a problem by
/// itself, the least time of the whole is the sum of theirs, and what is proved of each is proved of all.
/// </summary>
public static class CrewSegments
{
    /// <summary>The pieces, in order: of each its first task, and the piece as a problem. One piece where there is no cut.</summary>
    public static IReadOnlyList<(int First, CrewProblem Problem)> Of(CrewProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var pieces = new List<(int, CrewProblem)>();
        var first = 0;
        for (var next = 1; next <= problem.Tasks.Length; next++)
        {
            if (next == problem.Tasks.Length || IsCut(problem, first, next))
            {
                pieces.Add((first, Piece(problem, first, next)));
                first = next;
            }
        }

        return pieces;
    }

    /// <summary>The schedule of the whole out of those of its pieces, one right after the other.</summary>
    /// <param name="problem">The whole.</param>
    /// <param name="pieces">Its pieces with their schedules.</param>
    public static CrewSchedule Join(CrewProblem problem, IReadOnlyList<(CrewProblem Problem, CrewSchedule Schedule)> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        var starts = ImmutableArray.CreateBuilder<long>();
        var people = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        var clock = 0L;
        foreach (var (piece, schedule) in pieces)
        {
            starts.AddRange(schedule.Starts.Select(start => clock + start));
            people.AddRange(schedule.People);
            clock += schedule.End(piece);
        }

        // Who goes on with what is for the whole to say, where it does not matter who does what.
        ArgumentNullException.ThrowIfNull(problem);
        var joined = problem.AsksWho ? new CrewSchedule(starts.ToImmutable(), people.ToImmutable()) : CrewSchedule.With(problem, starts.ToImmutable(), null);
        return joined with { IsOptimal = pieces.All(piece => piece.Schedule.IsOptimal), Least = pieces.Sum(piece => piece.Schedule.Least) };
    }

    /// <summary>
    /// Whether everything from a task on waits until all of some tasks is over. Lags run from earlier to later tasks alone, so the last task before
    /// the cut, or the first behind it, has to be the mark that all others wait for.
    /// </summary>
    private static bool IsCut(CrewProblem problem, int first, int next)
    {
        var mark = next - 1;
        // The mark waits for all before it in the piece, down to their last effect; all behind it wait for the mark.
        var over = new bool[mark - first + 1];
        over[^1] = true;
        for (var task = mark; task >= first; task--)
        {
            if (!over[task - first])
            {
                continue;
            }

            foreach (var earlier in problem.Tasks[task].After.Concat(problem.Tasks[task].AfterHandsOf.Where(one => problem.Tasks[one].Attended == problem.Tasks[one].Duration)))
            {
                if (earlier >= first)
                {
                    over[earlier - first] = true;
                }
            }
        }

        if (!Array.TrueForAll(over, one => one))
        {
            return false;
        }

        var waits = new bool[problem.Tasks.Length];
        waits[mark] = true;
        for (var task = next; task < problem.Tasks.Length; task++)
        {
            // Whoever waits for the hands of the mark alone does not wait for its end.
            waits[task] = problem.Tasks[task].After.Any(earlier => waits[earlier])
                || problem.Tasks[task].AfterHandsOf.Any(earlier => waits[earlier] && (earlier != mark || problem.Tasks[mark].Attended == problem.Tasks[mark].Duration));
            if (!waits[task])
            {
                return false;
            }
        }

        return true;
    }

    private static CrewProblem Piece(CrewProblem problem, int first, int next) => problem with
    {
        Tasks =
        [
            .. problem.Tasks[first..next].Select(task => task with
            {
                After = [.. task.After.Where(earlier => earlier >= first).Select(earlier => earlier - first)],
                AfterHandsOf = [.. task.AfterHandsOf.Where(earlier => earlier >= first).Select(earlier => earlier - first)],
                KnownFrom = task.KnownFrom >= first ? task.KnownFrom - first : -1,
            }),
        ],
    };
}
