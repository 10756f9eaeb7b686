using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>
/// The protective equipment that the job and its steps take: what authors write, and what the usual cautions name that stand over a step. One thing
/// has one name in a pack, the author's where there is one.
/// </summary>
internal sealed class PpeList
{
    private readonly ImmutableArray<string> _job;
    private readonly ImmutableArray<ImmutableArray<string>> _steps;

    /// <summary>Goes through the steps of a job.</summary>
    public PpeList(ImmutableArray<PlannedStep> steps, ActionDetails job, CardWarnings warnings, Wordbook book)
    {
        var written = steps.Select(Written).ToList();
        ImmutableArray<string> all = [.. job.Ppe.Concat(written.SelectMany(one => one)).Distinct()];
        _job = [.. job.Ppe.Distinct()];
        _steps =
        [
            .. steps.Zip(written, (step, own) => own.Concat(
                from gear in warnings.GearAt(step.Number)
                where !own.Concat(_job).Any(worn => gear.IsNamedBy(worn))
                select all.FirstOrDefault(worn => gear.IsNamedBy(worn)) ?? gear.Title(book)).Except(_job).Distinct().ToImmutableArray()),
        ];
    }

    /// <summary>Each once, the job's own first, then in the order of the steps.</summary>
    public ImmutableArray<string> All => [.. _job.Concat(_steps.SelectMany(one => one)).Distinct()];

    /// <summary>What a step takes beside what is worn on the whole job.</summary>
    public ImmutableArray<string> At(PlannedStep step) => _steps[step.Number - 1];

    private static ImmutableArray<string> Written(PlannedStep step) =>
        [.. step.Joint?.Kind.Ppe ?? [], .. step.Target?.Ppe ?? [], .. step.Details.Ppe];
}
