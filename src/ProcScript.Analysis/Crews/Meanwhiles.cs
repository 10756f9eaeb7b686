using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Totals;

namespace ProcScript.Analysis.Crews;

/// <summary>Finds when several people do different things at once: that is what a second person saves.</summary>
internal static class Meanwhiles
{
    /// <summary>The times, in order; the same people going on side by side make one of them.</summary>
    public static ImmutableArray<CrewMeanwhile> Of(CrewProblem problem, CrewSchedule schedule, ImmutableArray<ImmutableArray<PlannedStep>> steps)
    {
        var moments = Enumerable.Range(0, problem.Tasks.Length)
            .SelectMany(task => (long[])[schedule.Starts[task], schedule.Starts[task] + problem.Tasks[task].Attended]).Distinct().Order().ToList();
        var found = ImmutableArray.CreateBuilder<CrewMeanwhile>();
        foreach (var (from, to) in moments.Zip(moments.Skip(1)))
        {
            var tasks = Enumerable.Range(0, problem.Tasks.Length)
                .Where(task => schedule.Starts[task] <= from && to <= schedule.Starts[task] + problem.Tasks[task].Attended && !schedule.People[task].IsEmpty).ToList();
            if (tasks.Count < 2)
            {
                continue;
            }

            ImmutableArray<CrewShare> shares =
            [
                .. tasks.SelectMany(task => schedule.People[task].Select(person => new CrewShare(CrewPlans.NameOf(person), [.. steps[task].Select(step => step.Number)])))
                    .OrderBy(share => share.Name, StringComparer.Ordinal),
            ];
            if (found.Count > 0 && found[^1] is var last && last.End == from / JobTimes.Milliseconds && last.People.Select(share => share.Name).SequenceEqual(shares.Select(share => share.Name)))
            {
                found[^1] = last with
                {
                    End = to / JobTimes.Milliseconds,
                    People = [.. last.People.Zip(shares, (before, now) => before with { Steps = [.. before.Steps.Union(now.Steps)] })],
                };
            }
            else
            {
                found.Add(new CrewMeanwhile(from / JobTimes.Milliseconds, to / JobTimes.Milliseconds, shares));
            }
        }

        return found.ToImmutable();
    }
}
