using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Lifting;

/// <summary>A step that lifts a part of known mass, and what one person may lift there.</summary>
/// <param name="Step">The step.</param>
/// <param name="Kilograms">What is lifted: the part with what is still inside it then.</param>
/// <param name="Limit">The recommended weight limit for one person, in kg.</param>
/// <param name="People">How many lift.</param>
/// <param name="Hoist">Whether a hoist does.</param>
internal sealed record PartLift(PlannedStep Step, double Kilograms, double Limit, int People, bool Hoist)
{
    private const double Centimetre = 0.01;
    private const double Inch = 0.0254;

    /// <summary>What goes aside stays on its hinge or on one end, which bears half of it: common practice, no source.</summary>
    private const double HalfBorne = 0.5;

    /// <summary>Whether the author writes the mass in pounds: then people are told of the lift in pounds, by the US form of the equation.</summary>
    public bool IsInPounds => InPounds(Step.Part!);

    /// <summary>What those who lift may lift together, in kg.</summary>
    public double TeamLimit => TeamLift.Limit(Limit, People);

    /// <summary>Whether it is too heavy for those who lift it; never where a hoist does.</summary>
    public bool IsTooHeavy => !Hoist && Lifted > TeamLimit;

    /// <summary>How much of it hands lift, in kg.</summary>
    public double Lifted => Kilograms * ShareLifted(Step.Verb);

    /// <summary>Whether people have to know the limit: no hoist lifts, and it is too heavy for one, or the author says how it is lifted.</summary>
    public bool IsNotable => !Hoist && (Lifted > Limit || Geometry != LiftGeometry.None);

    /// <summary>What is said of the lift: by the action, and where that says nothing, by the part.</summary>
    public LiftGeometry Geometry => GeometryOf(Step);

    /// <summary>The lifts of a job, by the numbers of their steps.</summary>
    /// <param name="steps">All steps.</param>
    /// <param name="job">What the procedure says of the whole job: its people are there for a lift that one cannot do.</param>
    /// <param name="settings">What the shop has chosen.</param>
    public static IReadOnlyDictionary<int, PartLift> Of(IReadOnlyCollection<PlannedStep> steps, ActionDetails job, PathSettings settings)
    {
        var masses = LiftedMass.Of(steps);
        var most = settings.Get(SettingsTable.OnePersonMass).BaseValue;
        return steps.Where(step => masses.ContainsKey(step.Number)).ToDictionary(step => step.Number, step => Of(step, masses[step.Number], job, most));
    }

    /// <summary>Whether anything is lifted that is more than one person may lift alone; where nothing is, no lift need be looked at closer.</summary>
    /// <param name="actions">What is done.</param>
    /// <param name="settings">What the shop has chosen.</param>
    public static bool AnyBeyondOne(ImmutableArray<PerformedAction> actions, PathSettings settings)
    {
        var most = settings.Get(SettingsTable.OnePersonMass).BaseValue;
        var masses = LiftedMass.Of(actions);
        foreach (var action in masses.Count == 0 ? [] : actions)
        {
            if (masses.TryGetValue(action.Number, out var kilograms)
                && (Part)action.Target! is var part
                && kilograms * ShareLifted(action.Verb) > LimitOf(GeometryOf(action.Verb, StepOrigin.Details(action).Lift, part.Lift), part, most))
            {
                return true;
            }
        }

        return false;
    }

    private static PartLift Of(PlannedStep step, double kilograms, ActionDetails job, double most)
    {
        var limit = LimitOf(GeometryOf(step), step.Part!, most);
        var people = kilograms * ShareLifted(step.Verb) > limit ? Math.Max(step.Details.People, job.People) : step.Details.People;
        return new PartLift(step, kilograms, limit, Math.Max(1, people), step.Details.Hoist || step.Part!.Hoist);
    }

    /// <summary>
    /// The limit for one person in kg, by the form of the equation that is in the author's units. A shop that lets one person lift less than the
    /// load constant has chosen that figure, in whatever unit.
    /// </summary>
    private static double LimitOf(LiftGeometry lift, Part part, double most)
    {
        var (form, pound, length) = InPounds(part)
            ? (LiftingEquation.Customary, Units.Pound.Factor, Inch)
            : (LiftingEquation.Metric, 1.0, Centimetre);
        var ideal = most < LiftingEquation.Metric.LoadConstant ? most : form.LoadConstant * pound;
        return lift == LiftGeometry.None ? ideal : ideal * Compute(lift, form, length) / form.LoadConstant;
    }

    /// <summary>
    /// The limit for one person, in the unit of the form. What is not said counts as ideal, and the lifting as short. A part is set down with as
    /// much care as it is taken up, so the lift is judged at both ends and the worse one counts.
    /// </summary>
    internal static double Compute(LiftGeometry lift, LiftingEquation form, double length)
    {
        var task = new LiftingTask
        {
            Horizontal = Most(lift.Reach) / length,
            Distance = (Most(lift.Height) - Least(lift.Height)) / length,
            Asymmetry = Most(lift.Twist) ?? 0,
            Frequency = (Most(lift.Frequency) ?? 0) * 60,
            Coupling = lift.Grip ?? LiftGrip.Good,
        };
        return Math.Min(
            form.Limit(task with { Vertical = Least(lift.Height) / length }),
            form.Limit(task with { Vertical = Most(lift.Height) / length }));
    }

    /// <summary>Of a part whose own mass is not said, what lies inside it tells.</summary>
    private static bool InPounds(Part part) =>
        part.Mass is { } mass ? mass.Unit == Units.Pound || mass.Unit.Symbol == "oz" : part.Children.Any(InPounds);

    private static LiftGeometry GeometryOf(PlannedStep step) => GeometryOf(step.Verb, step.Details.Lift, step.Part!.Lift);

    private static double ShareLifted(Verb verb) => IsAside(verb) ? HalfBorne : 1;

    private static bool IsAside(Verb verb) => verb is Verb.Aside or Verb.Return;

    /// <summary>What a part says is about taking it out; how it goes aside only the action can say.</summary>
    private static LiftGeometry GeometryOf(Verb verb, LiftGeometry action, LiftGeometry part)
    {
        if (action == LiftGeometry.None || IsAside(verb))
        {
            return IsAside(verb) ? action : part;
        }

        return new()
        {
            Reach = action.Reach ?? part.Reach,
            Height = action.Height ?? part.Height,
            Twist = action.Twist ?? part.Twist,
            Frequency = action.Frequency ?? part.Frequency,
            Grip = action.Grip ?? part.Grip,
        };
    }

    private static double? Least(Quantity? quantity) => quantity is null ? null : ToTheHair(quantity.Low * quantity.Unit.Factor);

    private static double? Most(Quantity? quantity) => quantity is null ? null : ToTheHair(quantity.High * quantity.Unit.Factor);

    /// <summary>What lies below is noise of the conversion of units, and must not put 175 cm beyond 175 cm.</summary>
    private static double ToTheHair(double value) => Math.Round(value, 9);
}
