using System.Collections.Immutable;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// How long the alerts of a job tell people to wait, as in <c>Let it cool for 30 min.</c> A wait counts once, where the alert stands first; not where
/// the machine gives the same as the <c>wait</c> of an energy, for that step has it.
/// </summary>
internal static class WarnedWaits
{
    /// <summary>The steps, each with the longest wait that is first told there.</summary>
    public static ImmutableArray<PlannedStep> Add(ImmutableArray<PlannedStep> steps, CardWarnings warnings)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        var waits = steps.Select(step => (step.Target as Energy)?.Wait?.BaseValue).OfType<double>().ToHashSet();
        return [.. steps.Select(step => step with { WarnedWait = Longest(warnings[step.Number]) })];

        double Longest(ImmutableArray<PlanAlert> alerts) => alerts
            .Where(alert => !alert.IsUsual && told.Add(alert.Text))
            .Select(alert => SaidTime.Seconds(alert.Text))
            .Where(seconds => !waits.Contains(seconds))
            .Append(0)
            .Max();
    }
}
