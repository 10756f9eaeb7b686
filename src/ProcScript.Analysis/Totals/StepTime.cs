using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>How long a step takes, in seconds.</summary>
/// <param name="Attended">How long it holds its people, from its start.</param>
/// <param name="Duration">How long until its effect is there, what cures having cured.</param>
/// <param name="IsUsual">Whether it is a usual time, for the author gives none.</param>
internal readonly record struct StepTime(double Attended, double Duration, bool IsUsual)
{
    /// <summary>How long until one person goes on with the next step: when the hands are free, and of a pause when it is over.</summary>
    public double Held { get; private init; } = Attended;

    /// <summary>The author's time for the action, else for the item, else for its kind, else what is usual.</summary>
    public static StepTime Of(PlannedStep step)
    {
        if (step.Verb == Verb.Pause)
        {
            // Nobody works meanwhile, and without a time nobody knows how long.
            return new StepTime(0, step.Details.Time?.BaseValue ?? 0, false) { Held = step.Details.Time?.BaseValue ?? 0 };
        }

        var given = GivenTime.Of(step);
        var duration = given?.Seconds ?? SaidTime.With(Usual(step), step.Target is Energy energy ? GivenTime.Wait(energy, step.Verb) : 0, step);
        var attended = step.InBackground
            ? Math.Min(duration, (step.Target as Fluid)?.Attended?.BaseValue ?? UsualTimes.SetGoing)
            : duration;
        return new StepTime(attended, duration + (step.Cure?.BaseValue ?? 0), given is null);
    }

    /// <summary>The time of an action of which nobody has said anything.</summary>
    /// <param name="request">The action.</param>
    /// <param name="state">The machine before it.</param>
    public static StepTime Of(ActionRequest request, MachineState state) => Of(new PlannedStep
    {
        Number = 0,
        Phase = PlanPhase.Strip,
        Card = 0,
        Verb = request.Verb,
        Target = request.Target,
        Count = request.Target is Joint joint ? state.Attached(joint) : 0,
        Source = default,
    });

    private static double Usual(PlannedStep step) => step.Target switch
    {
        _ when step.Cap is not null => step.Count * UsualTimes.Cap,
        Joint joint when GivenTime.IsByThePiece(step) =>
            (step.Count * (joint.Role == JointRole.Cover ? UsualTimes.Cover : UsualTimes.PerJoint(joint.Kind.Category))) + NamedWork.Seconds(step),
        Fluid => NamedWork.Seconds(step) is > 0 and var named ? named : UsualTimes.FluidHandling,
        Part part when IsHoisted(step, part) => UsualTimes.Hoisting,
        Energy => UsualTimes.PerAction(step.Verb),
        _ => UsualTimes.PerAction(step.Verb) + NamedWork.Seconds(step),
    };

    private static bool IsHoisted(PlannedStep step, Part part) =>
        (part.Hoist || step.Details.Hoist) && step.Verb is Verb.Remove or Verb.Fit or Verb.Aside or Verb.Return;
}
