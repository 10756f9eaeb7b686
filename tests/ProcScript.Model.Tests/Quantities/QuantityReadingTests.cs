using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Tests.Quantities;

/// <summary>From a quantity as written to its numbers.</summary>
public sealed class QuantityReadingTests
{
    [Theory]
    [InlineData("22 N.m", 22, 22, 22, "N·m", QuantityForm.Plain)]
    [InlineData("22 ± 2 N.m", 22, 20, 24, "N·m", QuantityForm.PlusMinus)]
    [InlineData("22 +- 2 N·m", 22, 20, 24, "N·m", QuantityForm.PlusMinus)]
    [InlineData("22 N.m ± 2 N.m", 22, 20, 24, "N·m", QuantityForm.PlusMinus)]
    [InlineData("20 N.m ± 10 %", 20, 18, 22, "N·m", QuantityForm.PlusMinus)]
    [InlineData("-20 V ± 10 %", -20, -22, -18, "V", QuantityForm.PlusMinus)]
    [InlineData("50 ± 5 %", 50, 45, 55, "%", QuantityForm.PlusMinus)]
    [InlineData("0.5 .. 2.0 L/min", 1.25, 0.5, 2, "L/min", QuantityForm.Range)]
    [InlineData("10 mm .. 1 in", 17.7, 10, 25.4, "mm", QuantityForm.Range)]
    [InlineData("90 °C ± 9 °F", 90, 85, 95, "°C", QuantityForm.PlusMinus)]
    [InlineData("0 °C .. 50 °F", 5, 0, 10, "°C", QuantityForm.Range)]
    [InlineData("1 1/2 in", 1.5, 1.5, 1.5, "in", QuantityForm.Plain)]
    [InlineData("-5 °C", -5, -5, -5, "°C", QuantityForm.Plain)]
    [InlineData("7", 7, 7, 7, "", QuantityForm.Plain)]
    [InlineData("12 fl.oz", 12, 12, 12, "fl·oz", QuantityForm.Plain)]
    [InlineData("12 floz", 12, 12, 12, "fl·oz", QuantityForm.Plain)]
    public void It_means_these_numbers(string written, double nominal, double low, double high, string symbol, QuantityForm form)
    {
        var quantity = QuantityFormatTests.Read(written);
        Assert.Equal(nominal, quantity.Nominal, 1e-9);
        Assert.Equal(low, quantity.Low, 1e-9);
        Assert.Equal(high, quantity.High, 1e-9);
        Assert.Equal(symbol, quantity.Unit.Symbol);
        Assert.Equal(form, quantity.Form);
    }

    [Fact]
    public void The_base_value_is_in_the_base_unit()
    {
        Assert.Equal(363.15, QuantityFormatTests.Read("90 °C").BaseValue, 1e-9);
        Assert.Equal(0.025, QuantityFormatTests.Read("25 mm").BaseValue, 1e-12);
    }

    [Theory]
    [InlineData("Nm", "N.m")]
    [InlineData("nM", "N.m")]
    [InlineData("ft.lb", "lbf.ft")]
    [InlineData("lb.ft", "lbf.ft")]
    [InlineData("ftlb", "lbf.ft")]
    [InlineData("in.lb", "lbf.in")]
    [InlineData("kg.m", "kgf.m")]
    [InlineData("lbf.fr", "lbf.ft")]
    public void An_unknown_unit_of_a_torque_is_guessed(string written, string meant)
    {
        var finding = FindingOfTorque("22 " + written);
        Assert.Equal("PRC1201", finding.Rule.Code);
        Assert.Equal($"did you mean `{meant}`?", finding.Help);
        Assert.Equal(meant, Assert.Single(finding.Fixes).Edits[0].NewText);
    }

    [Fact]
    public void A_guess_is_of_the_dimension_that_is_asked_for() =>
        // "kpm" is near to kPa too, which no torque is measured in.
        Assert.DoesNotContain("kPa", FindingOfTorque("2 kpm").Help, StringComparison.Ordinal);

    [Fact]
    public void A_wrong_dimension_names_both() =>
        Assert.Equal("`torque` takes a torque, and `mm` is a length", FindingOfTorque("22 mm").Message);

    private static Finding FindingOfTorque(string written) =>
        Assert.Single(Samples.Bind($"tool w \"w\"\nfastener f \"f\" {{ drive w  torque {written} }}").Findings);
}
