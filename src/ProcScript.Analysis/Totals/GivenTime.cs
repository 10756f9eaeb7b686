using ProcScript.Analysis.Following;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Totals;

/// <summary>The time that an author gives for a step, and what carries it.</summary>
/// <param name="Written">The time as it is written.</param>
/// <param name="Carrier">What carries it.</param>
/// <param name="Times">How often it counts: of what is written for one piece, the pieces of the step.</param>
/// <param name="WaitSeconds">What the machine gives besides, in seconds.</param>
internal readonly record struct GivenTime(Quantity Written, TimeCarrier Carrier, int Times, double WaitSeconds)
{
    /// <summary>The time of the step in seconds.</summary>
    public double Seconds => (Times * Written.BaseValue) + WaitSeconds;

    /// <summary>The author's time for the action, else for the item, else for its kind; null where none is given.</summary>
    public static GivenTime? Of(PlannedStep step) => step switch
    {
        { Details.Time: { } own } => new GivenTime(own, TimeCarrier.Action, 1, 0),
        { Cap: not null } => null,
        { Target: Joint joint } => IsByThePiece(step) ? OfJoint(joint, step.Count) : null,
        { Target: Fluid { Takes: { } takes } } => new GivenTime(takes, TimeCarrier.Takes, 1, 0),
        { Target: Energy { Time: { } time } energy } => new GivenTime(time, TimeCarrier.Item, 1, Wait(energy, step.Verb)),
        { Target.Time: { } time } => new GivenTime(time, TimeCarrier.Item, 1, 0),
        _ => null,
    };

    /// <summary>Whether a step takes as long as its pieces take.</summary>
    public static bool IsByThePiece(PlannedStep step) => step.Opens || step.Closes || step.Tightens || step.Verb == Verb.Loosen;

    /// <summary>The wait for what is stored to run down, in seconds; nothing waits when the energy comes back.</summary>
    public static double Wait(Energy energy, Verb verb) => verb == Verb.Isolate ? energy.Wait?.BaseValue ?? 0 : 0;

    private static GivenTime? OfJoint(Joint joint, int count) =>
        joint.Time is { } own ? new GivenTime(own, TimeCarrier.Item, count, 0)
        : joint.Kind.Time is { } kind ? new GivenTime(kind, TimeCarrier.Kind, count, 0)
        : null;
}
