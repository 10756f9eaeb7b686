using ProcScript.Analysis.Fluids;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Outside.Tests.Fluids;

/// <summary>The balance of a refrigerant charge against what is printed of it.</summary>
public sealed class ChargeBalanceTests
{
    /// <summary>
    /// Nameplate 0.850 kg, recovered 0.79 kg: 92.9 %, under 95 %. Worked by hand; that 95 % must come out is SAE J2788, from memory.
    /// </summary>
    [Fact]
    public void A_charge_that_had_leaked_shows()
    {
        var balance = Of(0.850, 0.79, 0.855);

        Assert.Equal(92.9, Math.Round(balance.ShareRecovered!.Value * 100, 1));
        Assert.False(balance.IsRecovered);
        Assert.Equal(0.06, balance.Missing!.Value, 1e-12);
    }

    /// <summary>95 % itself is enough (SAE J2788, from memory): 0.8075 kg of 0.850 kg.</summary>
    [Theory]
    [InlineData(0.8075, true)]
    [InlineData(0.807, false)]
    [InlineData(0.850, true)]
    public void The_bound_is_95_per_cent(double recovered, bool isEnough) => Assert.Equal(isEnough, Of(0.850, recovered, 0.850).IsRecovered);

    /// <summary>±15 g, or 0.5 oz rounded up (SAE J2788, from memory): 0.835 kg to 0.865 kg for 0.850 kg.</summary>
    [Theory]
    [InlineData(0.835, true)]
    [InlineData(0.865, true)]
    [InlineData(0.834, false)]
    [InlineData(0.866, false)]
    public void The_band_is_15_g_either_way(double charged, bool isWithin) => Assert.Equal(isWithin, Of(0.850, 0.84, charged).IsCharged);

    /// <summary>To put back what came out leaves the leak uncharged: common practice, no source, is to charge by weight to the plate.</summary>
    [Fact]
    public void Adding_back_what_came_out_is_not_a_charge() => Assert.False(Of(0.850, 0.79, 0.79).IsCharged);

    /// <summary>1 oz is 28.349 523 125 g (16 CFR 500.19, read): 30 oz is 0.8505 kg.</summary>
    [Fact]
    public void A_reading_in_ounces_counts_in_kilograms()
    {
        ChargeBalance balance = new(Plate(0.850), Quantity(30, "oz"), Quantity(29.5, "oz"));

        Assert.Equal(0.85048569375, balance.Recovered!.Nominal, 1e-12);
        Assert.Equal(0.8363109321875, balance.Charged!.Nominal, 1e-12);
        Assert.True(balance.IsRecovered);
        Assert.True(balance.IsCharged);
    }

    /// <summary>The accuracy of 15 g is the one that is printed as 0.5 oz, which is 14.17 g (from memory).</summary>
    [Fact]
    public void The_accuracy_in_grams_is_the_one_in_ounces() =>
        Assert.Equal(0.5, Math.Round(Kilograms(RefrigerantService.ChargeAccuracy).In(Unit("oz")).Nominal, 1));

    [Fact]
    public void What_was_not_read_is_not_judged()
    {
        ChargeBalance balance = new(Kilograms(0.850), null, null);

        Assert.Null(balance.ShareRecovered);
        Assert.Null(balance.IsRecovered);
        Assert.Null(balance.IsCharged);
        Assert.Null(balance.Missing);
    }

    [Fact]
    public void A_mass_is_not_balanced_with_a_volume() =>
        Assert.Throws<ArgumentException>(() => new ChargeBalance(Kilograms(0.850), Quantity(0.8, "L"), null));

    [Fact]
    public void Nothing_has_no_share() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ChargeBalance(Kilograms(0), null, null));

    private static ChargeBalance Of(double nameplate, double recovered, double charged) =>
        new(Plate(nameplate), Kilograms(recovered), Kilograms(charged));

    private static Quantity Plate(double kilograms) => Kilograms(kilograms) with
    {
        Low = kilograms - RefrigerantService.ChargeAccuracy,
        High = kilograms + RefrigerantService.ChargeAccuracy,
        Form = QuantityForm.PlusMinus,
    };

    private static Quantity Kilograms(double value) => Quantity(value, "kg");

    private static Quantity Quantity(double value, string unit) => new(value, value, value, Unit(unit), QuantityForm.Plain);

    private static Unit Unit(string unit) => Model.Quantities.Units.Find(unit)!;
}
