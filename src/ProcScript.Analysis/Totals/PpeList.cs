using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>The protective equipment that the job and its steps take.</summary>
internal static class PpeList
{
    /// <summary>Each once, the job's own first, then in the order of the steps.</summary>
    public static ImmutableArray<string> Of(ImmutableArray<PlannedStep> steps, ActionDetails job) =>
        [.. job.Ppe.Concat(steps.SelectMany(Of)).Distinct()];

    /// <summary>What a step takes beside what is worn on the whole job.</summary>
    public static ImmutableArray<string> Of(PlannedStep step, ActionDetails job) => [.. Of(step).Except(job.Ppe)];

    private static IEnumerable<string> Of(PlannedStep step) =>
        [.. step.Joint?.Kind.Ppe ?? [], .. step.Target?.Ppe ?? [], .. step.Details.Ppe];
}
