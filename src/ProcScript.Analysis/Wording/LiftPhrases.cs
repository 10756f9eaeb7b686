using System.Globalization;
using ProcScript.Analysis.Lifting;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Wording;

/// <summary>Lifts as findings speak of them.</summary>
internal static class LiftPhrases
{
    /// <summary>A mass in the author's unit, kilograms or pounds, to a tenth.</summary>
    public static string Mass(double kilograms, PartLift lift)
    {
        return lift.IsInPounds
            ? string.Create(CultureInfo.InvariantCulture, $"{kilograms / Units.Pound.Factor:0.#} lb")
            : string.Create(CultureInfo.InvariantCulture, $"{kilograms:0.#} kg");
    }

    /// <summary>How much of the part hands lift: <c>31 kg</c>, <c>22.5 kg, half of its mass</c>.</summary>
    public static string Lifted(PartLift lift) => Mass(lift.Lifted, lift) + (lift.Lifted < lift.Kilograms ? ", half of its mass" : "");

    /// <summary>What is done with the part, as the rest of a passive: <c>is lifted</c>.</summary>
    public static string Done(PartLift lift) => lift.Step.Verb switch
    {
        Verb.Aside or Verb.Return => "is moved",
        Verb.Support => "is held up",
        _ => "is lifted",
    };

    /// <summary>What the limit was reckoned with: <c>reach 45 cm, grip fair</c>; <c>an ideal lift</c> where nothing is said.</summary>
    public static string Conditions(LiftGeometry lift)
    {
        string?[] said =
        [
            lift.Reach is { } reach ? $"reach {reach.Print()}" : null,
            lift.Height is { } height ? $"height {height.Print()}" : null,
            lift.Twist is { } twist ? $"twist {twist.Print()}" : null,
            lift.Frequency is { } frequency ? frequency.Print() : null,
            lift.Grip is { } grip ? $"grip {Word(grip)}" : null,
        ];
        return said.OfType<string>().ToList() is { Count: > 0 } words ? string.Join(", ", words) : "an ideal lift";
    }

    /// <summary>The other way to a lighter lift, where something lies inside the part.</summary>
    public static string OrLess(Part part) => part.Children.IsEmpty ? "" : ", or take off first what lies inside it";

    private static string Word(LiftGrip grip) => grip switch
    {
        LiftGrip.Good => "good",
        LiftGrip.Fair => "fair",
        _ => "poor",
    };
}
