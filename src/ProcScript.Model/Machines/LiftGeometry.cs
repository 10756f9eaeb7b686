using ProcScript.Model.Quantities;

namespace ProcScript.Model.Machines;

/// <summary>How something is lifted, as far as the author says.</summary>
public sealed record LiftGeometry
{
    /// <summary>Nothing said.</summary>
    public static LiftGeometry None { get; } = new();

    /// <summary>How far the hands are in front of the ankles.</summary>
    public Quantity? Reach { get; init; }

    /// <summary>How high the hands are: at the start and at the end of the lift.</summary>
    public Quantity? Height { get; init; }

    /// <summary>How far the body turns.</summary>
    public Quantity? Twist { get; init; }

    /// <summary>How often it is lifted.</summary>
    public Quantity? Frequency { get; init; }

    /// <summary>How well the hands hold it.</summary>
    public LiftGrip? Grip { get; init; }
}

/// <summary>How well hands hold what they lift.</summary>
public enum LiftGrip
{
    /// <summary>Handles, or edges to close a hand round.</summary>
    Good,

    /// <summary>Hands bend round it at a right angle.</summary>
    Fair,

    /// <summary>Bulky, slippery, sharp or sagging.</summary>
    Poor,
}
