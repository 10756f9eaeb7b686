using System.Globalization;
using ProcScript.Analysis.Bolts;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Wording;

/// <summary>Figures of bolts as findings give them, to three significant digits.</summary>
internal static class BoltPhrases
{
    /// <summary>A torque in the unit that the author uses: <c>33.9 N·m</c>.</summary>
    public static string Torque(double newtonMetres, Unit unit) => Print(newtonMetres / unit.Factor, unit);

    /// <summary>The proof load: <c>21.2 kN</c> of a metric bolt, <c>6590 lbf</c> of an inch one.</summary>
    public static string ProofLoad(Bolt bolt)
    {
        var unit = Units.Find(bolt.Thread.System == ThreadSystem.Metric ? "kN" : "lbf")!;
        return Print(bolt.ProofLoad / unit.Factor, unit);
    }

    /// <summary>What bolt it is: <c>M8x1.25 of class 8.8</c>.</summary>
    public static string Name(Tightening tightening, TorqueBand band) => $"{tightening.Kind.Thread} of {band.Bolt.Grade.Words}";

    /// <summary>The nut factor: <c>K 0.20, dry</c>; of a band the end that is reckoned with.</summary>
    public static string Factor(double used, NutFactor factor) =>
        string.Create(CultureInfo.InvariantCulture, $"K {used:0.00}, {factor.Surface}");

    /// <summary>A share of the proof load: <c>a fifth</c>, <c>75 %</c>.</summary>
    public static string Share(double share) =>
        share == 0.2 ? "a fifth" : string.Create(CultureInfo.InvariantCulture, $"{share * 100:0.##} %");

    private static string Print(double value, Unit unit)
    {
        var digits = Math.Clamp(2 - (int)Math.Floor(Math.Log10(value)), 0, 15);
        var rounded = Math.Round(value, digits, MidpointRounding.AwayFromZero);
        return new Quantity(rounded, rounded, rounded, unit, QuantityForm.Plain).Print();
    }
}
