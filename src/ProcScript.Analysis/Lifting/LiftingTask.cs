using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Lifting;

/// <summary>
/// A lift as the revised NIOSH equation takes it, in the units of the form of the equation at hand: cm for <see
/// cref="LiftingEquation.Metric"/>, in for <see cref="LiftingEquation.Customary"/>. Without words it is the ideal lift.
/// </summary>
public sealed record LiftingTask
{
    /// <summary>H: how far the hands are in front of the middle between the ankles; null for as near as can be.</summary>
    public double? Horizontal { get; init; }

    /// <summary>V: how high the hands are over the floor; null for knuckle height, the best there is.</summary>
    public double? Vertical { get; init; }

    /// <summary>D: how far the hands travel up or down; null for hardly.</summary>
    public double? Distance { get; init; }

    /// <summary>A: how far the body turns, in degrees.</summary>
    public double Asymmetry { get; init; }

    /// <summary>F: lifts in a minute; under 0.2 counts as 0.2.</summary>
    public double Frequency { get; init; }

    /// <summary>How long the lifting goes on.</summary>
    public LiftingDuration Duration { get; init; }

    /// <summary>The coupling of hands and load.</summary>
    public LiftGrip Coupling { get; init; }
}

/// <summary>How long lifting goes on, with a time of lighter work after it as the publication says.</summary>
public enum LiftingDuration
{
    /// <summary>Up to an hour.</summary>
    Short,

    /// <summary>Over one hour, up to two.</summary>
    Moderate,

    /// <summary>Over two hours, up to eight.</summary>
    Long,
}
