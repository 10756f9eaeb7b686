using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;

namespace ProcScript.Analysis.Totals;

/// <summary>How long one person waits for what cures, with nothing else to do.</summary>
/// <param name="Seconds">All such waits together.</param>
/// <param name="Longest">The step whose cure is waited for longest.</param>
/// <param name="Before">The step that waits for it; null for the end of the job.</param>
internal sealed record CureWaits(double Seconds, PlannedStep Longest, PlannedStep? Before)
{
    /// <summary>The waits of a job in which something cures.</summary>
    public static CureWaits Of(ImmutableArray<PlannedStep> steps)
    {
        var schedule = JobTimes.Starts(steps);
        var cured = steps.Where(step => step.Cure is not null).ToList();
        var (seconds, longest) = (0.0, 0.0);
        var (longestOf, before) = (cured[^1], (PlannedStep?)null);
        for (var i = 1; i <= steps.Length; i++)
        {
            var free = schedule[i - 1].Start + schedule[i - 1].Held;
            var waitsFor = i < steps.Length ? steps[i].WaitsFor.Select(number => steps[number - 1]) : steps;
            foreach (var last in waitsFor.Where(step => step.Cure is not null).OrderBy(step => schedule[step.Number - 1].End).TakeLast(1))
            {
                var wait = Math.Max(0, schedule[last.Number - 1].End - free);
                seconds += wait;
                if (wait > longest)
                {
                    (longest, longestOf, before) = (wait, last, i < steps.Length ? steps[i] : null);
                }
            }
        }

        return new CureWaits(seconds, longestOf, before);
    }
}
