namespace ProcScript.Analysis.Reaching;

/// <summary>What counts beside time where ways are compared, each in the seconds that it is worth. With none of them time alone counts.</summary>
/// <param name="Person">What each second of a further person counts: 1 for as much as one's own.</param>
/// <param name="Part">What a new part counts, in seconds a piece.</param>
/// <param name="Risk">What a step counts, in seconds, that touches a hazard or what a danger or a warning stands at.</param>
public sealed record ReachWeights(double Person = 0, double Part = 0, double Risk = 0)
{
    /// <summary>Time alone.</summary>
    public static ReachWeights TimeAlone { get; } = new();
}
