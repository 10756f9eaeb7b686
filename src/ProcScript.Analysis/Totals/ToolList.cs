using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Catalog;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Totals;

/// <summary>The tools that the steps take, so that nobody walks back for one.</summary>
internal static class ToolList
{
    private const string TorqueWrench = "torque wrench";

    /// <summary>
    /// The titles of a step's tools: those of the kind, the item and the action, and a torque wrench where there is a torque and none of
    /// them is one.
    /// </summary>
    public static ImmutableArray<string> Of(PlannedStep step)
    {
        var titles = Item(step).Concat(step.Details.Tools).Select(ItemWords.Of).Distinct().ToList();
        if (Torque(step) is not null && !titles.Exists(title => title.Contains("torque", StringComparison.OrdinalIgnoreCase)))
        {
            titles.Add(TorqueWrench);
        }

        return [.. titles];
    }

    /// <summary>
    /// In order of first use, those of the job as a whole first, for every step may need them; the torque wrench with the range that it
    /// has to cover.
    /// </summary>
    public static ImmutableArray<PlanTool> Of(ImmutableArray<PlannedStep> steps, ActionDetails job)
    {
        var uses = job.Tools.SelectMany(tool => steps.Select(step => (Title: ItemWords.Of(tool), Step: step.Number)))
            .Concat(steps.SelectMany(step => Of(step).Select(title => (Title: title, Step: step.Number))));
        return
        [
            .. uses.GroupBy(use => use.Title, use => use.Step).Select(tool => new PlanTool(
                tool.Key == TorqueWrench ? $"{TorqueWrench}, {TorqueWords.Range([.. steps.Select(Torque).OfType<TighteningTorque>().SelectMany(torque => torque.Stages)])}" : tool.Key,
                tool.First(),
                tool.Distinct().Count())),
        ];
    }

    /// <summary>How tight a step tightens; null where it leaves all slack or none is given.</summary>
    public static TighteningTorque? Torque(PlannedStep step) =>
        step is { Joint: { } joint, LeavesSlack: false } && (step.Closes || step.Verb == Verb.Tighten)
            ? step.Details.Torque ?? joint.Torque
            : null;

    private static IEnumerable<Tool> Item(PlannedStep step) => step switch
    {
        { Joint: { } joint } when step.Opens || step.Closes || step.Verb is Verb.Loosen or Verb.Tighten =>
            [.. joint.Kind.Drive is { } drive ? [drive] : ImmutableArray<Tool>.Empty, .. joint.Kind.Tools, .. joint.Tools],
        { Joint: null, Target: { } item } => item.Tools,
        _ => [],
    };
}
