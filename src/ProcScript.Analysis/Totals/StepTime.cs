using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>How long a step takes, in seconds.</summary>
/// <param name="Attended">How long it holds its people, from its start.</param>
/// <param name="Duration">How long until its effect is there.</param>
internal readonly record struct StepTime(double Attended, double Duration)
{
    /// <summary>The author's time for the action, else for the item, else for its kind, else what is usual.</summary>
    public static StepTime Of(PlannedStep step)
    {
        var duration = step.Details.Time?.BaseValue ?? WithoutOverride(step);
        return step.InBackground
            ? new StepTime(Math.Min(duration, (step.Target as Fluid)?.Attended?.BaseValue ?? UsualTimes.SetGoing), duration)
            : new StepTime(duration, duration);
    }

    private static double WithoutOverride(PlannedStep step) => step.Target switch
    {
        Joint joint when step.Opens || step.Closes || step.Verb is Verb.Loosen or Verb.Tighten => step.Count * PerPiece(joint),
        Joint => UsualTimes.PerAction(step.Verb),
        Fluid fluid => fluid.Takes?.BaseValue ?? fluid.Time?.BaseValue ?? UsualTimes.FluidHandling,
        Energy energy => (energy.Time?.BaseValue ?? UsualTimes.PerAction(step.Verb)) + Wait(energy, step.Verb),
        { } item => item.Time?.BaseValue ?? UsualTimes.PerAction(step.Verb),
        null => UsualTimes.PerAction(step.Verb),
    };

    private static double PerPiece(Joint joint) =>
        joint.Time?.BaseValue
        ?? joint.Kind.Time?.BaseValue
        ?? (joint.Role == JointRole.Cover ? UsualTimes.Cover : UsualTimes.PerJoint(joint.Kind.Category));

    /// <summary>The wait for what is stored to run down; nothing waits when the energy comes back.</summary>
    private static double Wait(Energy energy, Verb verb) => verb == Verb.Isolate ? energy.Wait?.BaseValue ?? 0 : 0;
}
