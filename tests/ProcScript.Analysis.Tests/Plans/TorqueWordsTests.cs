using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Plans;

public class TorqueWordsTests
{
    private static readonly TorqueWords Metric = new(TorqueUnit.NewtonMetre);

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
        Assert.Equal("16 lbf·ft (21.7 N·m)", new TorqueWords(TorqueUnit.PoundForceFoot).Both(Plain(16, Units.PoundForceFoot)));

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
