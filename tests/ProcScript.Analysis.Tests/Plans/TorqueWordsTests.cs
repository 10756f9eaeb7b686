using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Plans;

public class TorqueWordsTests
{
    private static readonly TorqueWords Metric = new(TorqueUnit.NewtonMetre, Wordbook.English);
    private static readonly TorqueWords AsWritten = new(TorqueUnit.AsWritten, Wordbook.English);

    // 22 N·m / 1.355 818 N·m (NIST SP 811 App. B.8) = 16.23 lbf·ft.
    [Fact]
    public void A_torque_is_printed_in_newton_metres_first() =>
        Assert.Equal("22 ± 2 N·m (16.2 ± 1.5 lbf·ft)", Metric.Both(new Quantity(22, 20, 24, Units.NewtonMetre, QuantityForm.PlusMinus)));

    // 16 lbf·ft × 1.355 818 N·m = 21.69 N·m.
    [Fact]
    public void A_torque_in_pounds_keeps_what_was_written() =>
        Assert.Equal("21.7 N·m (16 lbf·ft)", Metric.Both(Plain(16, Units.PoundForceFoot)));

    [Fact]
    public void A_shop_with_wrenches_in_pounds_reads_these_first() =>
        Assert.Equal("16 lbf·ft (21.7 N·m)", new TorqueWords(TorqueUnit.PoundForceFoot, Wordbook.English).Both(Plain(16, Units.PoundForceFoot)));

    [Theory]
    [InlineData(16, "lbf.ft", "16 lbf·ft (21.7 N·m)")]
    [InlineData(75, "lbf.in", "75 lbf·in (8.47 N·m)")]
    [InlineData(22, "N.m", "22 N·m (16.2 lbf·ft)")]
    [InlineData(5, "kgf.m", "5 kgf·m (49.0 N·m)")]
    [InlineData(60, "N.cm", "60 N·cm (5.31 lbf·in)")]
    [InlineData(20, "ozf.in", "20 ozf·in (14.1 N·cm)")]
    public void Where_nothing_is_chosen_the_authors_unit_comes_first(double value, string unit, string words) =>
        Assert.Equal(words, AsWritten.Both(Plain(value, Units.Find(unit)!)));

    // 75 lbf·in × 0.112 985 N·m (NIST SP 811 App. B.8) = 8.47 N·m, 8 lbf·in = 0.90 N·m: one digit of it is worth printing.
    [Fact]
    public void A_converted_tolerance_is_no_finer_than_what_was_written() =>
        Assert.Equal("75 ± 8 lbf·in (8.5 ± 0.9 N·m)", AsWritten.Both(new Quantity(75, 67, 83, Units.PoundForceInch, QuantityForm.PlusMinus)));

    [Fact]
    public void A_wrench_is_set_to_the_middle_of_what_is_right()
    {
        Assert.Equal(
            [new("22 N·m", "20 to 24 N·m", "16.2 ± 1.5 lbf·ft")],
            AsWritten.Stages(new TighteningTorque([new Quantity(22, 20, 24, Units.NewtonMetre, QuantityForm.PlusMinus)], [])));
        Assert.Equal(
            [new("57 lbf·ft", "50 to 64 lbf·ft", "68 to 87 N·m")],
            AsWritten.Stages(new TighteningTorque([new Quantity(57, 50, 64, Units.PoundForceFoot, QuantityForm.Range)], [])));
    }

    [Fact]
    public void A_stage_of_one_value_has_no_range_and_a_turn_has_no_torque() =>
        Assert.Equal(
            [new("7 N·m", "", "5.16 lbf·ft"), new("90°", "", "") { IsAngle = true }],
            AsWritten.Stages(new TighteningTorque([Plain(7, Units.NewtonMetre)], [Plain(90, Units.Find("°")!)])));

    [Fact]
    public void A_range_is_given_as_its_ends_are_written() =>
        Assert.Equal(
            "24 lbf·in to 40 lbf·ft",
            AsWritten.Range([Plain(40, Units.PoundForceFoot), Plain(24, Units.PoundForceInch), Plain(20, Units.NewtonMetre)]));

    [Fact]
    public void A_range_of_torques_goes_by_their_nominal_values() =>
        Assert.Equal(
            "5 N·m to 44 N·m",
            Metric.Range([new Quantity(44, 40, 48, Units.NewtonMetre, QuantityForm.PlusMinus), Plain(5, Units.NewtonMetre)]));

    [Fact]
    public void One_torque_is_no_range() =>
        Assert.Equal("5 N·m", Metric.Range([Plain(5, Units.NewtonMetre), Plain(5, Units.NewtonMetre)]));

    private static Quantity Plain(double value, Unit unit) => new(value, value, value, unit, QuantityForm.Plain);
}
