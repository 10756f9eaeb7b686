using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Outside.Tests.Units;

/// <summary>
/// Conversion factors against what standards and law publish. Each row names its source and whether it was read or is from memory.
/// </summary>
public sealed class PublishedConversionTests
{
    /// <summary>Rounded values, as printed.</summary>
    [Theory]
    // NIST SP 811, appendix B.8; read in public unit tests that quote it.
    [InlineData("lbf.ft", 1.355818, "N.m")]
    [InlineData("lbf.in", 0.1129848, "N.m")]
    [InlineData("kgf.m", 9.80665, "N.m")]
    // NIST SP 811, appendix B.8; from memory.
    [InlineData("ozf.in", 7.061552e-3, "N.m")]
    [InlineData("psi", 6.894757, "kPa")]
    [InlineData("bar", 100, "kPa")]
    // 16 CFR 500.19, as published by law.cornell.edu; read.
    [InlineData("in", 2.54, "cm")]
    [InlineData("lb", 0.453592, "kg")]
    [InlineData("oz", 28.3495, "g")]
    [InlineData("fl.oz", 29.5735, "mL")]
    [InlineData("qt", 0.946353, "L")]
    [InlineData("gal", 3.78541, "L")]
    public void One_unit_is_what_is_printed(string unit, double printed, string other) =>
        Assert.Equal(1, In(1, unit, other) / printed, 1e-6);

    /// <summary>Values that follow from definitions, to the last digit of a double.</summary>
    [Theory]
    // Inch 25.4 mm and pound 0.453 592 37 kg (16 CFR 500.19; NIST Handbook 44, appendix C; read).
    // Standard gravity 9.806 65 m/s² (NIST SP 811; read).
    [InlineData("lbf.ft", 0.45359237 * 9.80665 * 0.3048, "N.m")]
    [InlineData("lbf.in", 0.45359237 * 9.80665 * 0.0254, "N.m")]
    [InlineData("kgf.m", 9.80665, "N.m")]
    [InlineData("ozf.in", 0.45359237 * 9.80665 * 0.0254 / 16, "N.m")]
    [InlineData("psi", 0.45359237 * 9.80665 / (0.0254 * 0.0254), "Pa")]
    [InlineData("in", 25.4, "mm")]
    [InlineData("ft", 304.8, "mm")]
    [InlineData("lb", 453.59237, "g")]
    [InlineData("oz", 28.349523125, "g")]
    // US gallon 231 in³ (16 CFR 500.19; read).
    [InlineData("gal", 3.785411784, "L")]
    [InlineData("qt", 0.946352946, "L")]
    [InlineData("fl.oz", 29.5735295625, "mL")]
    [InlineData("floz", 29.5735295625, "mL")]
    [InlineData("gal/min", 3.785411784, "L/min")]
    public void One_unit_is_what_is_defined(string unit, double defined, string other) =>
        Assert.Equal(1, In(1, unit, other) / defined, 1e-12);

    /// <summary>Temperatures: °F = 1.8 °C + 32 and K = °C + 273.15, exact (NIST SP 811, appendix B.8; from memory).</summary>
    [Theory]
    [InlineData(0, 32)]
    [InlineData(100, 212)]
    [InlineData(-40, -40)]
    [InlineData(37, 98.6)]
    public void Temperatures_agree(double celsius, double fahrenheit)
    {
        Assert.Equal(fahrenheit, In(celsius, "°C", "°F"), 1e-9);
        Assert.Equal(celsius, In(fahrenheit, "°F", "°C"), 1e-9);
        Assert.Equal(celsius + 273.15, In(celsius, "°C", "K"), 1e-9);
    }

    /// <summary>The US units, not the imperial ones: an imperial gallon is 4.546 09 L (from memory).</summary>
    [Fact]
    public void The_gallon_is_the_american_one() => Assert.True(In(1, "gal", "L") < 4);

    private static double In(double value, string unit, string other)
    {
        var quantity = new Quantity(value, value, value, Model.Quantities.Units.Find(unit)!, QuantityForm.Plain);
        return quantity.In(Model.Quantities.Units.Find(other)!).Nominal;
    }
}
