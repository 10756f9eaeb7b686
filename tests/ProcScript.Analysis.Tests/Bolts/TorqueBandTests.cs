using CsCheck;
using ProcScript.Analysis.Bolts;
using ProcScript.Model.Catalog;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Bolts;

public class TorqueBandTests
{
    private static readonly Gen<Bolt> AnyBolt = Gen.Select(
        Gen.OneOf("M4", "M5", "M6", "M8", "M8x1", "M10", "M12", "M16", "M20", "M24"),
        Gen.OneOf("4.6", "5.8", "8.8", "10.9", "12.9"),
        (thread, grade) => Bolt.Of(thread, grade)!);

    [Theory]
    [InlineData("M8x1.25", "8")]
    [InlineData("M8x1.25", "A2-70")]
    [InlineData("M8x1.25", "5")]
    [InlineData("1/4-20", "8.8")]
    [InlineData("#10-24", "5")]
    [InlineData("1 3/4-5", "5")]
    [InlineData("M42x4.5", "8.8")]
    [InlineData("M20", "9.8")]
    [InlineData("ST4.8", "8.8")]
    [InlineData("M8", null)]
    [InlineData(null, "8.8")]
    public void A_bolt_of_unknown_strength_is_none(string? thread, string? grade) => Assert.Null(Bolt.Of(thread, grade));

    [Theory]
    [InlineData("class 8.8")]
    [InlineData("Grade 8.8")]
    [InlineData(" 8.8 ")]
    public void A_class_may_be_called_one(string grade) => Assert.Equal("8.8", Bolt.Of("M8", grade)!.Grade.Name);

    [Theory]
    [InlineData(true, true, "zinc", "oiled")]
    [InlineData(false, true, null, "with thread locker")]
    [InlineData(false, true, "zinc", "with thread locker")]
    [InlineData(false, false, "Zinc plated", "plated")]
    [InlineData(false, false, "wax on zinc", "waxed")]
    [InlineData(false, false, null, "dry")]
    [InlineData(false, false, " ", "dry")]
    [InlineData(false, false, "zinc flake", null)]
    [InlineData(false, false, "hot-dip zinc", null)]
    [InlineData(false, false, "phosphate", null)]
    public void A_surface_has_its_factor(bool oiled, bool threadLocker, string? coating, string? surface) =>
        Assert.Equal(surface, NutFactor.For(oiled, threadLocker, coating)?.Surface);

    [Fact]
    public void A_torque_and_its_preload_belong_together() =>
        Gen.Select(AnyBolt, Gen.Double[1, 100_000], Gen.Double[0.1, 0.3]).Sample((bolt, preload, factor) =>
            Math.Abs((bolt.PreloadOf(bolt.TorqueFor(preload, factor), factor) / preload) - 1) < 1e-12);

    /// <summary>The usual aim, three quarters of proof load, is sound on every surface, and so is anything between the ends.</summary>
    [Fact]
    public void The_usual_aim_is_sound() => Gen.Select(AnyBolt, AnySurface).Sample((bolt, factor) =>
    {
        var band = new TorqueBand(bolt, factor);
        foreach (var nutFactor in new[] { factor.Low, factor.High })
        {
            var torque = Torque(bolt.TorqueFor(0.75 * bolt.ProofLoad, nutFactor));
            Assert.False(band.IsBeyond(torque) || band.IsTooWeak(torque));
        }

        Assert.True(band.Least < band.Most);
    });

    /// <summary>A stronger class bears at least as much, and oil never lets a torque go further.</summary>
    [Fact]
    public void The_most_grows_with_the_class_and_falls_with_oil() =>
        Gen.OneOf("M4", "M6", "M10", "M16", "M20").Sample(thread =>
        {
            var most = new[] { "4.6", "5.8", "8.8", "10.9", "12.9" }.Select(grade => new TorqueBand(Bolt.Of(thread, grade)!, NutFactor.Dry).Most).ToList();
            Assert.Equal(most.Order(), most);

            var bolt = Bolt.Of(thread, "8.8")!;
            Assert.True(new TorqueBand(bolt, NutFactor.Oiled).Most < new TorqueBand(bolt, NutFactor.Dry).Most);
        });

    /// <summary>Whoever pulls harder is never less beyond, nor weaker.</summary>
    [Fact]
    public void More_torque_is_never_less_beyond_nor_weaker() =>
        Gen.Select(AnyBolt, AnySurface, Gen.Double[0.1, 1000], Gen.Double[1, 3]).Sample((bolt, factor, torque, more) =>
        {
            var band = new TorqueBand(bolt, factor);
            Assert.True(!band.IsBeyond(Torque(torque)) || band.IsBeyond(Torque(torque * more)));
            Assert.True(!band.IsTooWeak(Torque(torque * more)) || band.IsTooWeak(Torque(torque)));
        });

    [Fact]
    public void The_tolerance_counts()
    {
        var band = new TorqueBand(Bolt.Of("M8", "8.8")!, NutFactor.Dry);
        var torque = new Quantity(32, 30, 34, Units.NewtonMetre, QuantityForm.PlusMinus);

        Assert.True(band.IsBeyond(new TighteningTorque([torque], [])));
        Assert.False(band.IsBeyond(Torque(32)));
    }

    [Fact]
    public void An_angle_makes_the_preload_so_the_torque_before_it_is_never_weak()
    {
        var band = new TorqueBand(Bolt.Of("M10", "10.9")!, NutFactor.Dry);
        var angle = new Quantity(90, 90, 90, Units.Find("°")!, QuantityForm.Plain);

        Assert.True(band.IsTooWeak(Torque(5)));
        Assert.False(band.IsTooWeak(Torque(5) with { Angles = [angle] }));
        Assert.True(band.IsBeyond(Torque(150) with { Angles = [angle] }));
    }

    [Fact]
    public void A_kind_without_figures_has_no_band()
    {
        Assert.Null(TorqueBand.Of(KindOf(null, "8.8")));
        Assert.Null(TorqueBand.Of(KindOf("M8", null)));
        Assert.Null(TorqueBand.Of(KindOf("M8", "8.8") with { Coating = "zinc flake" }));
        Assert.Equal(NutFactor.Oiled, TorqueBand.Of(KindOf("M8", "8.8") with { Coating = "zinc flake", Oiled = true })!.Factor);
    }

    private static Gen<NutFactor> AnySurface =>
        Gen.OneOf(NutFactor.Dry, NutFactor.Oiled, NutFactor.Plated, NutFactor.Waxed, NutFactor.ThreadLocker);

    private static TighteningTorque Torque(double newtonMetres) =>
        new([new Quantity(newtonMetres, newtonMetres, newtonMetres, Units.NewtonMetre, QuantityForm.Plain)], []);

    private static Kind KindOf(string? thread, string? grade) =>
        new("bolt", "bolt", KindCategory.Fastener, new SourceSpan("x.proc", default)) { Thread = thread, Grade = grade };
}
