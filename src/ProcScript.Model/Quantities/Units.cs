using System.Collections.Frozen;
using System.Collections.Immutable;

namespace ProcScript.Model.Quantities;

/// <summary>
/// The units that a text may use. Every factor is exact by definition: the inch is 25.4 mm, the pound 0.453 592 37 kg and standard
/// gravity 9.806 65 m/s² (NIST SP 811, appendix B; 16 CFR 500.19), the US gallon 231 in³ (NIST Handbook 44, appendix C). The
/// gallon, quart and fluid ounce are the US ones.
/// </summary>
public static class Units
{
    private const double OneInch = 0.0254;
    private const double OneFoot = 12 * OneInch;
    private const double OnePound = 0.45359237;
    private const double Gravity = 9.80665;
    private const double OneGallon = 231 * OneInch * OneInch * OneInch;
    private const double OneLitre = 1e-3;

    /// <summary>A number of pieces; printed without a symbol.</summary>
    public static Unit Piece { get; } = new("", Dimension.Count, 1);

    /// <summary>The newton metre.</summary>
    public static Unit NewtonMetre { get; } = new("N·m", Dimension.Torque, 1);

    /// <summary>The pound-force foot.</summary>
    public static Unit PoundForceFoot { get; } = new("lbf·ft", Dimension.Torque, OnePound * Gravity * OneFoot);

    /// <summary>The pound-force inch.</summary>
    public static Unit PoundForceInch { get; } = new("lbf·in", Dimension.Torque, OnePound * Gravity * OneInch);

    /// <summary>The millimetre.</summary>
    public static Unit Millimetre { get; } = new("mm", Dimension.Length, 1e-3);

    /// <summary>The inch.</summary>
    public static Unit Inch { get; } = new("in", Dimension.Length, OneInch);

    /// <summary>The kilogram.</summary>
    public static Unit Kilogram { get; } = new("kg", Dimension.Mass, 1);

    /// <summary>The avoirdupois pound.</summary>
    public static Unit Pound { get; } = new("lb", Dimension.Mass, OnePound);

    /// <summary>The second.</summary>
    public static Unit Second { get; } = new("s", Dimension.Time, 1);

    /// <summary>The minute.</summary>
    public static Unit Minute { get; } = new("min", Dimension.Time, 60);

    /// <summary>The degree Celsius.</summary>
    public static Unit Celsius { get; } = new("°C", Dimension.Temperature, 1, 273.15);

    /// <summary>The degree Fahrenheit.</summary>
    public static Unit Fahrenheit { get; } = new("°F", Dimension.Temperature, 5.0 / 9.0, 459.67 * 5.0 / 9.0);

    /// <summary>The per cent.</summary>
    public static Unit Percent { get; } = new("%", Dimension.Ratio, 0.01);

    /// <summary>Every unit that can be written, a dimension after the other.</summary>
    public static ImmutableArray<Unit> All { get; } =
    [
        NewtonMetre,
        new("N·cm", Dimension.Torque, 0.01),
        new("kgf·m", Dimension.Torque, Gravity),
        new("kgf·cm", Dimension.Torque, Gravity / 100),
        PoundForceFoot,
        PoundForceInch,
        new("ozf·in", Dimension.Torque, OnePound / 16 * Gravity * OneInch),
        Millimetre,
        new("cm", Dimension.Length, 1e-2),
        new("m", Dimension.Length, 1),
        Inch,
        new("ft", Dimension.Length, OneFoot),
        new("µm", Dimension.Length, 1e-6),
        Kilogram,
        new("g", Dimension.Mass, 1e-3),
        new("mg", Dimension.Mass, 1e-6),
        Pound,
        new("oz", Dimension.Mass, OnePound / 16),
        new("L", Dimension.Volume, OneLitre),
        new("mL", Dimension.Volume, OneLitre / 1000),
        new("m3", Dimension.Volume, 1),
        new("cm3", Dimension.Volume, 1e-6),
        new("gal", Dimension.Volume, OneGallon),
        new("qt", Dimension.Volume, OneGallon / 4),
        new("fl·oz", Dimension.Volume, OneGallon / 128),
        new("Pa", Dimension.Pressure, 1),
        new("kPa", Dimension.Pressure, 1e3),
        new("MPa", Dimension.Pressure, 1e6),
        new("bar", Dimension.Pressure, 1e5),
        new("mbar", Dimension.Pressure, 100),
        new("psi", Dimension.Pressure, OnePound * Gravity / (OneInch * OneInch)),
        Celsius,
        Fahrenheit,
        new("K", Dimension.Temperature, 1),
        Second,
        new("ms", Dimension.Time, 1e-3),
        Minute,
        new("h", Dimension.Time, 3600),
        new("TMU", Dimension.Time, 0.036),
        new("V", Dimension.Voltage, 1),
        new("mV", Dimension.Voltage, 1e-3),
        new("kV", Dimension.Voltage, 1e3),
        new("A", Dimension.Current, 1),
        new("mA", Dimension.Current, 1e-3),
        new("ohm", Dimension.Resistance, 1),
        new("kohm", Dimension.Resistance, 1e3),
        new("Mohm", Dimension.Resistance, 1e6),
        new("N", Dimension.Force, 1),
        new("kN", Dimension.Force, 1e3),
        new("lbf", Dimension.Force, OnePound * Gravity),
        Percent,
        new("L/min", Dimension.Flow, OneLitre / 60),
        new("mL/min", Dimension.Flow, OneLitre / 1000 / 60),
        new("L/h", Dimension.Flow, OneLitre / 3600),
        new("gal/min", Dimension.Flow, OneGallon / 60),
        new("°", Dimension.Angle, 1),
        new("lifts/min", Dimension.Frequency, 1.0 / 60),
    ];

    private static FrozenDictionary<string, Unit> BySpelling { get; } = All
        .Select(unit => KeyValuePair.Create(SpellingOf(unit), unit))
        .Append(KeyValuePair.Create("floz", All.First(unit => unit.Symbol == "fl·oz")))
        .ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>
    /// The unit written <paramref name="spelling"/>, with <c>.</c> or <c>·</c> between factors; null where there is none.
    /// </summary>
    public static Unit? Find(string spelling) =>
        BySpelling.GetValueOrDefault(spelling.Replace('·', '.'));

    /// <summary>How the unit is written in a text: <c>N.m</c> for N·m.</summary>
    public static string SpellingOf(Unit unit) => unit.Symbol.Replace('·', '.');

    /// <summary>The units of one dimension, in the order of <see cref="All"/>.</summary>
    public static IEnumerable<Unit> Of(Dimension dimension) => All.Where(unit => unit.Dimension == dimension);
}
