namespace ProcScript.Analysis.Bolts;

/// <summary>A bolt of known thread and strength: what load it bears and what torque makes that load, by T = K·d·F.</summary>
/// <param name="Thread">The thread.</param>
/// <param name="Grade">The strength.</param>
/// <param name="StressArea">The tensile stress area in mm².</param>
public sealed record Bolt(ThreadDesignation Thread, StrengthGrade Grade, double StressArea)
{
    /// <summary>
    /// The proof load in N: stress area times proof stress. Standards round the area to three figures and then the load, so that their
    /// tables differ by up to 0.65 %.
    /// </summary>
    public double ProofLoad => StressArea * Grade.ProofStress;

    /// <summary>The bolt of a marked thread and grade; null where one of them is missing or not known here.</summary>
    /// <param name="thread">The thread as marked.</param>
    /// <param name="grade">The class or grade as marked.</param>
    public static Bolt? Of(string? thread, string? grade) =>
        ThreadDesignation.Parse(thread) is { StressArea: { } area } parsed && StrengthGrade.Find(grade, parsed) is { } strength
            ? new Bolt(parsed, strength, area)
            : null;

    /// <summary>The torque in N·m that makes a preload.</summary>
    /// <param name="preload">The preload in N.</param>
    /// <param name="nutFactor">K, without a unit.</param>
    public double TorqueFor(double preload, double nutFactor) => nutFactor * Metres * preload;

    private double Metres => Thread.Diameter / 1000;
}
