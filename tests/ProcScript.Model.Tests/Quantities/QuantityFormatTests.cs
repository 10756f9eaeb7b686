using System.Globalization;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Tests.Quantities;

/// <summary>Quantities in print.</summary>
public sealed class QuantityFormatTests
{
    [Theory]
    [InlineData("22 ± 2 N.m", "22 ± 2 N·m")]
    [InlineData("0.85 ± 0.02 kg", "0.85 ± 0.02 kg")]
    [InlineData("0.85 ± 0.1 kg", "0.85 ± 0.10 kg")]
    [InlineData("0.5 .. 2 L/min", "0.5 to 2.0 L/min")]
    [InlineData("-5 .. 5 °C", "-5 to 5 °C")]
    [InlineData("600 s", "600 s")]
    [InlineData("10 %", "10 %")]
    [InlineData("90 °", "90°")]
    [InlineData("3/8 in", "3/8 in")]
    [InlineData("1 3/8 in", "1 3/8 in")]
    [InlineData("63/64 in", "63/64 in")]
    [InlineData("2 in", "2 in")]
    [InlineData("0.3 in", "0.3 in")]
    [InlineData("0.1 in", "0.1 in")]
    [InlineData("33.3333 mm", "33.3333 mm")]
    [InlineData("0.000001 m", "0.000001 m")]
    [InlineData("123456789 Pa", "123456789 Pa")]
    [InlineData("0 V", "0 V")]
    public void What_was_written_is_printed(string written, string printed) => Assert.Equal(printed, Read(written).Print());

    [Theory]
    [InlineData("22 ± 2 N.m", "lbf.ft", "16.2 ± 1.5 lbf·ft")]
    [InlineData("44 ± 4 N.m", "lbf.ft", "32.5 ± 3.0 lbf·ft")]
    [InlineData("8 N.m", "lbf.in", "70.8 lbf·in")]
    [InlineData("120 N.m", "lbf.ft", "88.5 lbf·ft")]
    [InlineData("60 .. 70 lbf.in", "N.m", "6.8 to 7.9 N·m")]
    [InlineData("75 ± 8 lbf.in", "N.m", "8.5 ± 0.9 N·m")]
    [InlineData("105 ± 8 N.m", "lbf.ft", "77 ± 6 lbf·ft")]
    [InlineData("40 .. 45 lbf.ft", "N.m", "54 to 61 N·m")]
    [InlineData("90 ± 5 °C", "°F", "194 ± 9 °F")]
    [InlineData("212 ± 9 °F", "°C", "100 ± 5 °C")]
    [InlineData("-40 °C", "°F", "-40.0 °F")]
    [InlineData("850 g", "kg", "0.850 kg")]
    [InlineData("31 kg", "lb", "68.3 lb")]
    [InlineData("22 ± 2 N.m", "N.m", "22 ± 2 N·m")]
    public void A_converted_value_keeps_the_digits_that_its_tolerance_allows(string written, string unit, string printed) =>
        Assert.Equal(printed, Read(written).PrintIn(Units.Find(unit)!));

    [Theory]
    [InlineData(LimitRelation.AtMost, "≤ 5 V")]
    [InlineData(LimitRelation.AtLeast, "≥ 5 V")]
    [InlineData(LimitRelation.Less, "< 5 V")]
    [InlineData(LimitRelation.More, "> 5 V")]
    [InlineData(LimitRelation.Within, "5 V")]
    public void A_limit_has_its_sign(LimitRelation relation, string printed) =>
        Assert.Equal(printed, new Limit(relation, Read("5 V")).Print());

    [Fact]
    public void The_culture_of_the_thread_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = { NumberDecimalSeparator = ",", NegativeSign = "~" } };
            Assert.Equal("-0.5 to 2.0 L/min", Read("-0.5 .. 2 L/min").Print());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    /// <summary>Reads a quantity through the whole binder, as the expectation of a measurement.</summary>
    internal static Quantity Read(string written)
    {
        var library = Samples.Bind($$"""
            machine m "m" { part p "p" }
            procedure q "q" on m { work { measure "it" expect {{written}} } }
            """);
        Assert.Empty(library.Findings.Select(finding => finding.Message));
        return library.Procedures[0].Work[0].Expect!.Quantity;
    }
}
