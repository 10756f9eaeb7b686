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
    [InlineData("M8x1.25", "A2")]
    [InlineData("M8x1.25", "A2-75")]
    [InlineData("M30", "A2-70")]
    [InlineData("1/4-20", "A2-70")]
    [InlineData("M8x1.25", "5")]
    [InlineData("1/4-20", "8.8")]
    [InlineData("#10-24", "1")]
    [InlineData("1 3/4-5", "5")]
    [InlineData("M42x4.5", "8.8")]
    [InlineData("M20", "9.8")]
    [InlineData("ST4.8", "8.8")]
    [InlineData("M8", null)]
    [InlineData(null, "8.8")]
    public void A_bolt_of_unknown_strength_is_none(string? thread, string? grade) => Assert.Null(Bolt.Of(thread, grade));

    /// <summary>ISO 898-1 gives 8.8 up to and with M16 a smaller proof stress than above, SAE J429 grade 5 up to and with 1 in a larger one; stresses from memory.</summary>
    [Theory]
    [InlineData("M16", "8.8", 580)]
    [InlineData("M18", "8.8", 600)]
    [InlineData("1-8", "5", 586)]
    [InlineData("1 1/8-7", "5", 510)]
    [InlineData("3/4-10", "2", 379)]
    [InlineData("7/8-9", "2", 228)]
    public void A_diameter_at_the_edge_of_a_row_belongs_to_the_row_below(string thread, string grade, double proofStress) =>
        Assert.Equal(proofStress, Bolt.Of(thread, grade)!.Grade.ProofStress, 0.5);

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
    [InlineData(false, false, "zinc flake", "zinc flake")]
    [InlineData(false, true, "zinc flake", "with thread locker")]
    [InlineData(false, false, "cadmium", "cadmium plated")]
    [InlineData(false, false, "Cadmium plated", "cadmium plated")]
    [InlineData(false, false, "phosphate", "phosphated")]
    [InlineData(false, true, "moly paste", "anti-seize")]
    [InlineData(false, false, "hot-dip zinc", null)]
    [InlineData(false, true, "hot-dip zinc", null)]
    [InlineData(false, false, "PTFE", null)]
    public void A_surface_has_its_factor(bool oiled, bool threadLocker, string? coating, string? surface) =>
        Assert.Equal(surface, NutFactor.For(oiled, threadLocker, coating)?.Surface);

    [Theory]
    [InlineData(false, false, null, "stainless steel", 0.25)]
    [InlineData(false, false, "passivated", "stainless steel", 0.25)]
    [InlineData(true, false, null, "stainless steel oiled", 0.20)]
    [InlineData(false, true, null, "stainless steel with thread locker", 0.20)]
    [InlineData(false, false, "anti-seize", "anti-seize", 0.16)]
    public void Stainless_steel_has_a_factor_of_its_own(bool oiled, bool threadLocker, string? coating, string surface, double most)
    {
        var factor = NutFactor.For(oiled, threadLocker, coating, stainless: true)!;

        Assert.Equal((surface, most), (factor.Surface, factor.High));
    }

    [Theory]
    [InlineData(null, "8.8", null, StrengthDoubt.NoThread, "no thread is given")]
    [InlineData("ST4.8", "8.8", null, StrengthDoubt.UnknownThread, "`ST4.8` is no thread that tables of strength have")]
    [InlineData("M8", null, null, StrengthDoubt.NoGrade, "no grade is given")]
    [InlineData("M8", "8", null, StrengthDoubt.NutClass, "`8` is the class of a nut and says nothing of its bolt")]
    [InlineData("M8", "A4", null, StrengthDoubt.SteelWithoutClass, "`A4` names the steel and not its class, as `A4-70` does")]
    [InlineData("M8", "hard", null, StrengthDoubt.UnknownGrade, "no table has the grade `hard` for M8")]
    [InlineData("M8", "8.8", "hot-dip zinc", StrengthDoubt.UnknownSurface, "the friction of the coating \"hot-dip zinc\" is not known")]
    [InlineData("M8", "8.8", "zinc", StrengthDoubt.None, "")]
    [InlineData("M8", "A2-70", null, StrengthDoubt.None, "")]
    [InlineData("#10-24", "5", null, StrengthDoubt.None, "")]
    public void What_keeps_a_bolt_from_being_judged_is_told(string? thread, string? grade, string? coating, StrengthDoubt doubt, string why)
    {
        var kind = KindOf(thread, grade) with { Coating = coating };
        var strength = BoltStrength.Of(kind);

        Assert.Equal((doubt, why), (strength.Doubt, strength.Why(kind)));
        Assert.Equal(doubt == StrengthDoubt.None, strength.Band is not null);
        Assert.Equal(doubt is StrengthDoubt.NoThread or StrengthDoubt.UnknownThread, strength.Ceiling is null);
    }

    /// <summary>Whatever the grade and the surface turn out to be, the bolt bears no more than the ceiling that is told while they are not known.</summary>
    [Fact]
    public void No_bolt_bears_more_than_the_ceiling_of_its_thread() =>
        Gen.Select(
            Gen.OneOf("M4", "M8", "M8x1", "M16", "M24", "#10-24", "1/4-20", "1-8"),
            Gen.OneOf("4.6", "8.8", "12.9", "A2-50", "A4-80", "C1-110", "2", "5", "8"),
            Gen.OneOf(null, "zinc", "cadmium", "wax", "phosphate", "zinc flake"),
            Gen.Bool).Sample((thread, grade, coating, oiled) =>
        {
            var known = BoltStrength.Of(KindOf(thread, grade) with { Coating = coating, Oiled = oiled });
            if (known.Band is { } band)
            {
                foreach (var doubtful in new[] { KindOf(thread, null) with { Coating = coating, Oiled = oiled }, KindOf(thread, grade) with { Coating = "unheard of" }, KindOf(thread, null) with { Coating = "unheard of" } })
                {
                    Assert.True(BoltStrength.Of(doubtful).Ceiling!.Most >= band.Most || (band.Bolt.Grade.IsStainless && doubtful.Grade is null));
                }
            }
        });

    [Fact]
    public void Of_several_stages_the_highest_is_judged_wherever_it_stands()
    {
        var band = TorqueBand.Of(KindOf("M8", "8.8"))!;
        var (high, sound) = (Torque(band.Most * 1.1).Final, Torque(band.Most * 0.7).Final);

        Assert.True(band.IsBeyond(new TighteningTorque([high, sound], [])));
        Assert.True(band.IsBeyond(new TighteningTorque([sound, high, sound], [])));
        Assert.False(band.IsBeyond(new TighteningTorque([sound, sound], [])));
    }

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
        Assert.Null(TorqueBand.Of(KindOf("M8", "8.8") with { Coating = "hot-dip zinc" }));
        Assert.Equal(NutFactor.Oiled, TorqueBand.Of(KindOf("M8", "8.8") with { Coating = "zinc flake", Oiled = true })!.Factor);
    }

    private static Gen<NutFactor> AnySurface =>
        Gen.OneOf(NutFactor.Dry, NutFactor.Oiled, NutFactor.Plated, NutFactor.Waxed, NutFactor.ThreadLocker, NutFactor.Cadmium, NutFactor.ZincFlake, NutFactor.Phosphated, NutFactor.AntiSeize, NutFactor.Stainless);

    private static TighteningTorque Torque(double newtonMetres) =>
        new([new Quantity(newtonMetres, newtonMetres, newtonMetres, Units.NewtonMetre, QuantityForm.Plain)], []);

    private static Kind KindOf(string? thread, string? grade) =>
        new("bolt", "bolt", KindCategory.Fastener, new SourceSpan("x.proc", default)) { Thread = thread, Grade = grade };
}
