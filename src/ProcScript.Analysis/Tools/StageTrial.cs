using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Stripping;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tools;

/// <summary>Tries another order of a stage before anybody hears of it: it has to be proven, and to save changes over strip and refit together.</summary>
/// <param name="tools">The tools of a step.</param>
internal sealed class StageTrial(ToolList tools)
{
    /// <summary>How many changes the strip and the whole job save; null where the new order is not proven.</summary>
    public (int Strip, int All)? Saved(StripRun strip, RefitRun refit, Stage stage, ImmutableArray<Step> order)
    {
        var procedure = strip.Procedure;
        var facts = new MachineFacts(procedure.Machine);
        var stages = procedure.Stages.Replace(stage, stage with { Steps = order }, ReferenceEqualityComparer.Instance);
        var other = StripRunner.Run(strip.Library, facts, procedure.With(stages));
        if (!other.IsSound || RefitDerivation.Attempt(facts, other) is not { Run: { } otherRefit, Failures.IsEmpty: true })
        {
            return null;
        }

        var (before, after) = (StepList.Of(strip, refit).Steps, StepList.Of(other, otherRefit).Steps);
        return (
            Changes(before, PlanPhase.Strip) - Changes(after, PlanPhase.Strip),
            Changes(before, null) - Changes(after, null));
    }

    private int Changes(ImmutableArray<PlannedStep> steps, PlanPhase? phase) =>
        ToolChanges.Of(steps.Where(step => step.Cap is null && (phase is null || step.Phase == phase)).Select(tools.Of));
}
