using ProcScript.Analysis.Bolts;

namespace ProcScript.Outside.Tests.Bolts;

/// <summary>Bolts of stainless steel against printed tables.</summary>
public sealed class StainlessTests
{
    /// <summary>Stress at 0.2 % strain and tensile strength in MPa (monsterbolts.com, guide to stainless grades; read). A1 and A4 of the same class alike.</summary>
    [Theory]
    [InlineData("A2-50", 210, 500)]
    [InlineData("A2-70", 450, 700)]
    [InlineData("A4-80", 600, 800)]
    [InlineData("A8-100", 800, 1000)]
    public void A_class_has_the_strength_that_is_printed(string grade, double proof, double tensile)
    {
        var strength = Bolt.Of("M8", grade)!.Grade;

        Assert.Equal((proof, tensile, true), (strength.ProofStress, strength.TensileStrength, strength.IsStainless));
    }

    /// <summary>
    /// Torques in N·m at 90 % of the 0.2 % stress, for a friction of 0.1, 0.2 and 0.3, of classes 50, 70 and 80 (mastik.pt, catalog page 686, values for A1,
    /// A2 and A4; read). All are called sound: even the driest is below the most, and the slipperiest far above weak.
    /// </summary>
    [Theory]
    [InlineData("M4", 0.86, 1.35, 1.66, 1.85, 2.9, 3.6, 2.4, 3.8, 4.8)]
    [InlineData("M5", 1.6, 2.6, 3.3, 3.6, 5.7, 7.0, 4.8, 7.6, 9.4)]
    [InlineData("M6", 2.9, 4.6, 5.7, 6.3, 10.0, 12.2, 8.4, 13.2, 16.3)]
    [InlineData("M8", 7.1, 11.2, 13.9, 15.2, 24.1, 30.0, 20.3, 32.1, 40.0)]
    [InlineData("M20", 115.0, 187.0, 234.0, 247.0, 401.0, 501.0, 330.0, 534.0, 669.0)]
    [InlineData("M24", 198.0, 322.0, 403.0, 426.0, 690.0, 863.0, 568.0, 920.0, 1151.0)]
    public void Every_printed_torque_is_called_sound(string thread, params double[] printed)
    {
        for (var i = 0; i < printed.Length; i++)
        {
            string[] grades = ["A2-50", "A2-70", "A4-80"];
            var band = new TorqueBand(Bolt.Of(thread, grades[i / 3])!, NutFactor.Stainless);
            Assert.InRange(printed[i], 2 * band.Least, band.Most);
            Assert.True(printed[i] <= 0.231 * band.Most / NutFactor.Stainless.High);
        }
    }

    /// <summary>
    /// The least torque in N·m at which a bolt breaks (optimas.com, pre-load and tightening torques of stainless fasteners; read). What is called too much
    /// begins just about there, and nowhere above 1.21 times it.
    /// </summary>
    [Theory]
    [InlineData("M5", "A2-70", 7.8)]
    [InlineData("M5", "A4-80", 8.8)]
    [InlineData("M6", "A2-70", 13)]
    [InlineData("M6", "A4-80", 15)]
    [InlineData("M8", "A2-70", 32)]
    [InlineData("M8", "A4-80", 37)]
    [InlineData("M10", "A2-70", 65)]
    [InlineData("M10", "A4-80", 74)]
    [InlineData("M12", "A2-70", 110)]
    [InlineData("M12", "A4-80", 130)]
    public void The_most_is_about_what_breaks_it(string thread, string grade, double breaking) =>
        Assert.InRange(new TorqueBand(Bolt.Of(thread, grade)!, NutFactor.Stainless).Most / breaking, 0.95, 1.21);

    /// <summary>K of the same table, from its preload in kN and torque: 0.14 at a friction of 0.1 (M8 and M10 of class 70; read).</summary>
    [Theory]
    [InlineData(8, 12.6, 14.5)]
    [InlineData(10, 20, 30)]
    public void The_least_nut_factor_is_what_is_printed(double diameter, double preload, double torque) =>
        Assert.Equal(NutFactor.Stainless.Low, torque / (diameter * preload), 0.011);
}
