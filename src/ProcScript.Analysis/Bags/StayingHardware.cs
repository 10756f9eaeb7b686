using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Catalog;

namespace ProcScript.Analysis.Bags;

/// <summary>
/// The hardware that comes off, goes back and lies in no bag: connectors and lines stay on their ends, captive screws and clips on their parts.
/// With the bags and what is scrapped that is all that comes off.
/// </summary>
internal static class StayingHardware
{
    /// <summary>Each kind once, in the order in which it first comes off.</summary>
    public static ImmutableArray<PlanStaying> Of(ImmutableArray<PlannedStep> steps) =>
    [
        .. steps.Where(step => Stays(step) && step.Count > step.Renewed)
            .GroupBy(step => step.Joint!.Kind)
            .Select(kind => new PlanStaying(
                ItemWords.Of(kind.Key, kind.First().Book),
                kind.Sum(step => step.Count - step.Renewed),
                [.. kind.Select(step => step.Number)],
                [.. kind.Select(step => step.Mirror)])),
    ];

    /// <summary>Whether what a step takes off is a captive fastener or clip, which somebody might look for a bag for.</summary>
    public static bool IsCaptive(PlannedStep step) => Stays(step) && step.Joint!.Kind.Category is KindCategory.Fastener or KindCategory.Clip;

    private static bool Stays(PlannedStep step) => step is { Opens: true, Joint: { IsTemporary: false } joint }
        && !OrderList.IsScrap(step.Fate, joint)
        && joint.Kind is { Captive: true } or { Category: KindCategory.Connector or KindCategory.Line };
}
