using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Tools;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What is due once the job is over, in words.</summary>
internal static class FollowUps
{
    /// <summary>The torque once more, as the step that gave it had it.</summary>
    public static PlanFollowUp Of(FollowUpRule rule, ImmutableArray<PlannedStep> steps, ToolList tools)
    {
        var joint = (Joint)rule.Target.Target;
        var fastening = steps.LastOrDefault(step => step.Joint == joint && step.Phase == PlanPhase.Refit);
        var due = new PlannedStep
        {
            Book = tools.Book,
            Number = 0,
            Phase = PlanPhase.Refit,
            Card = 0,
            Verb = Verb.Retorque,
            Target = joint,
            Count = joint.Count,
            Details = fastening?.Details ?? ActionDetails.None,
            Source = rule.Source,
        };
        return new PlanFollowUp(
            StepText.Of(due),
            rule.When,
            joint.Name,
            ItemWords.Place(joint),
            ToolList.Torque(due) is { } torque ? tools.Torques.Both(torque) : "",
            tools.Of(due));
    }
}
