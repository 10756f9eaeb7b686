using CsCheck;
using ProcScript.Analysis.Bolts;

namespace ProcScript.Analysis.Tests.Bolts;

public class ThreadDesignationTests
{
    [Theory]
    [InlineData("M8x1.25", 8, 1.25)]
    [InlineData("M8", 8, 1.25)]
    [InlineData(" M8 ", 8, 1.25)]
    [InlineData("M8 × 1.25", 8, 1.25)]
    [InlineData("M10x1", 10, 1)]
    [InlineData("M8x1.25-6g", 8, 1.25)]
    [InlineData("M8x1.25-5g6g", 8, 1.25)]
    [InlineData("M2.5", 2.5, 0.45)]
    [InlineData("M9x1.25", 9, 1.25)]
    public void A_metric_marking_is_read(string marking, double diameter, double pitch)
    {
        var thread = ThreadDesignation.Parse(marking);

        Assert.Equal(new ThreadDesignation(ThreadSystem.Metric, diameter, pitch), thread);
    }

    [Theory]
    [InlineData("M12x1.75 LH", true)]
    [InlineData("M8x1.25-LH", true)]
    [InlineData("M8-LH", true)]
    [InlineData("M8x1.25-6g-LH", true)]
    [InlineData("1/2-13 UNC-LH", true)]
    [InlineData("1/2-13UNC-2A-LH", true)]
    [InlineData("#10-24 LH", true)]
    [InlineData("M8x1.25", false)]
    [InlineData("1/2-13 UNC", false)]
    public void The_hand_is_read(string marking, bool isLeft)
    {
        Assert.Equal(isLeft, ThreadDesignation.Parse(marking)!.IsLeftHand);
        Assert.Equal(isLeft, ThreadDesignation.SaysLeftHand(marking));
    }

    [Theory]
    [InlineData("G 1/2 LH", true)]
    [InlineData("W21.8x1/14 LH", true)]
    [InlineData("Tr20x4-LH", true)]
    [InlineData("ALH3", false)]
    [InlineData("G 1/2", false)]
    [InlineData(null, false)]
    public void Any_marking_may_say_left_hand(string? marking, bool isLeft) => Assert.Equal(isLeft, ThreadDesignation.SaysLeftHand(marking));

    [Theory]
    [InlineData("1/4-20", 0.25, 20, null)]
    [InlineData("3/8-16 UNC", 0.375, 16, "UNC")]
    [InlineData("3/8-16UNC-2A", 0.375, 16, "UNC")]
    [InlineData("1 1/8-7 UNC", 1.125, 7, "UNC")]
    [InlineData("1-1/8-7", 1.125, 7, null)]
    [InlineData("1-8 UNC", 1, 8, "UNC")]
    [InlineData("2-4.5 UNC", 2, 4.5, "UNC")]
    [InlineData("#10-24", 0.19, 24, null)]
    [InlineData("No. 8-32 UNC", 0.164, 32, "UNC")]
    [InlineData("8-32 UNC", 0.164, 32, "UNC")]
    [InlineData("2-56", 0.086, 56, null)]
    public void An_inch_marking_is_read(string marking, double inches, double perInch, string? series)
    {
        var thread = ThreadDesignation.Parse(marking)!;

        Assert.Equal(ThreadSystem.Unified, thread.System);
        Assert.Equal(inches, thread.Diameter / 25.4, 1e-9);
        Assert.Equal(perInch, 25.4 / thread.Pitch, 1e-9);
        Assert.Equal(series, thread.Series);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("ST4.8")]
    [InlineData("4.0")]
    [InlineData("M")]
    [InlineData("M9")]
    [InlineData("M0x1")]
    [InlineData("M8x0")]
    [InlineData("M8x1.25 rolled")]
    [InlineData("Tr20x4")]
    [InlineData("G 1/2")]
    [InlineData("1/0-20")]
    [InlineData("0/4-20")]
    [InlineData("1/4-0")]
    [InlineData("#13-24")]
    [InlineData("8.8")]
    public void Anything_else_is_no_thread(string? marking) => Assert.Null(ThreadDesignation.Parse(marking));

    [Fact]
    public void Any_text_is_read_or_not_but_never_harms() =>
        Gen.String[Gen.Char["M0123456789.x×-/# UNCFLHgA"], 0, 16].Sample(marking =>
            ThreadDesignation.Parse(marking) is not { } thread || (thread.Diameter > 0 && thread.Pitch > 0 && double.IsFinite(thread.Pitch)));

    /// <summary>A finer pitch leaves more of the bolt; a thicker bolt has more.</summary>
    [Fact]
    public void The_stress_area_grows_with_the_diameter_and_shrinks_with_the_pitch() =>
        Gen.Select(Gen.Double[2, 39], Gen.Double[0.1, 0.45], Gen.Double[1.01, 2], Gen.Enum<ThreadSystem>()).Sample((diameter, share, more, system) =>
        {
            var pitch = share * diameter;
            var area = new ThreadDesignation(system, diameter, pitch).StressArea!.Value;

            Assert.True(new ThreadDesignation(system, diameter * more, pitch).StressArea > area);
            Assert.True(new ThreadDesignation(system, diameter, pitch / more).StressArea > area);
            Assert.InRange(area, 0, Math.PI / 4 * diameter * diameter);
        });

    [Fact]
    public void A_length_in_place_of_the_pitch_has_no_stress_area() => Assert.Null(ThreadDesignation.Parse("M8x25")!.StressArea);
}
