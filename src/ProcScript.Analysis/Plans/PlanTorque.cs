namespace ProcScript.Analysis.Plans;

/// <summary>One stage of tightening, as a torque wrench is set for it.</summary>
/// <param name="Set">What the wrench is set to, in the first unit: of a tolerance or a range the middle, <c>57 lbf·ft</c>; of a turn its angle.</param>
/// <param name="Range">From what to what the torque is right, in the same unit; empty where one value is given.</param>
/// <param name="Other">The same in the second unit, with what is right; empty for a turn.</param>
public sealed record PlanTorque(string Set, string Range, string Other)
{
    /// <summary>Whether it is turned on by an angle, and no torque is read.</summary>
    public bool IsAngle { get; init; }
}
