using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Lifting;

/// <summary>A lift that is too heavy for those who do it, and the author's step that it comes from.</summary>
/// <param name="Lift">The lift; of a removal and its refit, the worse one.</param>
/// <param name="Step">The step as written.</param>
/// <param name="IsNamed">Whether the step names the part itself, so that what stands at the step holds for the lift.</param>
internal sealed record HeavyLift(PartLift Lift, Step Step, bool IsNamed)
{
    /// <summary>The lifts of a proven procedure that are too heavy, in the order of their steps.</summary>
    public static IEnumerable<HeavyLift> Of(ProcedureOutcome outcome)
    {
        if (outcome is not { Strip: { } strip, Refit: { } refit } || !PartLift.AnyBeyondOne([.. strip.Actions, .. refit.Actions], outcome.OwnSettings))
        {
            return [];
        }

        var lifts = PartLift.Of(StepList.Of(strip, refit).Steps, outcome.Procedure.Details, outcome.OwnSettings).Values;
        return
            from lift in lifts
            where lift.IsTooHeavy
            // The inverse is told where the author's step stands.
            let number = lift.Step.Phase == PlanPhase.Refit ? lift.Step.Mirror : lift.Step.Number
            where number > 0
            let written = strip.Actions[number - 1].Origin switch
            {
                WrittenStep origin => new HeavyLift(lift, origin.Step, IsNamed: true),
                ExpandedStep origin => new HeavyLift(lift, origin.Step, origin.For is null),
                _ => null,
            }
            where written is not null
            group written by (written.Step, lift.Step.Part) into both
            orderby both.Min(one => one.Lift.Step.Number)
            select both.MaxBy(one => one.Lift.Lifted / one.Lift.TeamLimit)!;
    }
}
