using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Plans;

public class QuantityWordsTests
{
    private static readonly Unit NewtonMetre = new("N·m", Dimension.Torque, 1);
    private static readonly Unit PoundForceFoot = new("lbf·ft", Dimension.Torque, 1.3558179483314004);
    private static readonly Unit Kilogram = new("kg", Dimension.Mass, 1);
    private static readonly Unit Volt = new("V", Dimension.Voltage, 1);

    [Fact]
    public void A_tolerance_is_printed_without_the_noise_of_binary_fractions() =>
        Assert.Equal("0.85 ± 0.02 kg", QuantityWords.Of(new Quantity(0.85, 0.83, 0.87, Kilogram, QuantityForm.PlusMinus)));

    [Fact]
    public void A_range_is_printed_by_its_ends() =>
        Assert.Equal("0.5 to 2 kg", QuantityWords.Of(new Quantity(1.25, 0.5, 2, Kilogram, QuantityForm.Range)));

    // 22 N·m / 1.355 818 N·m (NIST SP 811 App. B.8) = 16.23 lbf·ft.
    [Fact]
    public void A_torque_is_printed_in_newton_metres_first() =>
        Assert.Equal(
            "22 ± 2 N·m (16.2 ± 1.5 lbf·ft)",
            QuantityWords.Torque(new Quantity(22, 20, 24, NewtonMetre, QuantityForm.PlusMinus)));

    [Fact]
    public void A_torque_in_pounds_keeps_what_was_written() =>
        Assert.Equal("21.7 N·m (16 lbf·ft)", QuantityWords.Torque(new Quantity(16, 16, 16, PoundForceFoot, QuantityForm.Plain)));

    [Fact]
    public void A_great_torque_keeps_three_figures() =>
        Assert.Equal("312 N·m (230 lbf·ft)", QuantityWords.Torque(new Quantity(312, 312, 312, NewtonMetre, QuantityForm.Plain)));

    [Theory]
    [InlineData(LimitRelation.Within, "5 V")]
    [InlineData(LimitRelation.AtMost, "at most 5 V")]
    [InlineData(LimitRelation.AtLeast, "at least 5 V")]
    [InlineData(LimitRelation.Less, "less than 5 V")]
    [InlineData(LimitRelation.More, "more than 5 V")]
    public void A_limit_is_printed_in_words(LimitRelation relation, string expected) =>
        Assert.Equal(expected, QuantityWords.Of(new Limit(relation, new Quantity(5, 5, 5, Volt, QuantityForm.Plain))));

    [Theory]
    [InlineData(0.1, "0.1")]
    [InlineData(0.00001, "0.00001")]
    [InlineData(100000, "100000")]
    [InlineData(1e18, "1E+18")]
    public void A_number_has_as_many_places_as_it_needs(double value, string expected) =>
        Assert.Equal(expected, QuantityWords.Number(value));
}
