using ProcScript.Analysis.Bolts;

namespace ProcScript.Outside.Tests.Bolts;

/// <summary>Which threads start in each other's holes, against printed lists.</summary>
public sealed class ThreadFitTests
{
    /// <summary>
    /// The pairs of inch and metric sizes that a seller's page lists as near enough to be confused (jandesupply.com, guide on metric and inch; read):
    /// of M8 and 5/16 in it says that they go together a turn or two and then jam. Coarse and fine threads alike.
    /// </summary>
    [Theory]
    [InlineData("#10-24", "M5")]
    [InlineData("#10-32", "M5")]
    [InlineData("1/4-20", "M6")]
    [InlineData("1/4-28", "M6")]
    [InlineData("5/16-18", "M8")]
    [InlineData("5/16-24", "M8")]
    [InlineData("3/8-16", "M10")]
    [InlineData("3/8-24", "M10")]
    [InlineData("1/2-13", "M12")]
    [InlineData("1/2-20", "M12")]
    public void Sizes_that_a_page_calls_look_alikes_are_near(string inch, string metric) => Assert.Equal(ThreadFit.Near, Between(inch, metric));

    /// <summary>Two pitches of one diameter (ISO 261; M8 × 1 and M10 × 1.25 read, the others from memory).</summary>
    [Theory]
    [InlineData("M8x1.25", "M8x1")]
    [InlineData("M10x1.5", "M10x1.25")]
    [InlineData("M12x1.75", "M12x1.5")]
    [InlineData("1/2-13 UNC", "1/2-20 UNF")]
    public void Two_pitches_of_one_diameter_are_near(string one, string other) => Assert.Equal(ThreadFit.Near, Between(one, other));

    /// <summary>Neighbours in the series of sizes are told apart by hand (ISO 261, ASME B1.1; common practice, no source).</summary>
    [Theory]
    [InlineData("M4", "M5")]
    [InlineData("M6", "M7")]
    [InlineData("M8", "M10")]
    [InlineData("M12", "M14")]
    [InlineData("M16", "M18")]
    [InlineData("M22", "M24")]
    [InlineData("M8", "3/8-16")]
    [InlineData("M6", "5/16-18")]
    [InlineData("#8-32", "#10-24")]
    [InlineData("#10-24", "#12-24")]
    [InlineData("#12-24", "1/4-20")]
    [InlineData("1/4-20", "5/16-18")]
    [InlineData("7/16-14", "1/2-13")]
    [InlineData("7/8-9", "1-8")]
    public void Neighbouring_sizes_are_not_near(string one, string other) => Assert.Equal(ThreadFit.None, Between(one, other));

    [Theory]
    [InlineData("M8", "M8x1.25", ThreadFit.Same)]
    [InlineData("1/2-13", "1/2-13 UNC", ThreadFit.Same)]
    [InlineData("M8x1.25", "M8x1.25-LH", ThreadFit.OtherHand)]
    [InlineData("M8x1-LH", "M8x1.25-LH", ThreadFit.Near)]
    [InlineData("M8x1.25-LH", "M10x1.5", ThreadFit.None)]
    public void The_hand_counts(string one, string other, ThreadFit fit) => Assert.Equal(fit, Between(one, other));

    /// <summary>
    /// Half the depth of a thread, by the minor diameters of nuts in mm that a maker of taps prints (yamawa, catalog 2016-2017, technical page 24;
    /// read): D − D1 is the whole depth, on both sides.
    /// </summary>
    [Theory]
    [InlineData(5, 0.8, 4.134)]
    [InlineData(6, 1, 4.917)]
    [InlineData(8, 1.25, 6.647)]
    [InlineData(8, 1, 6.917)]
    [InlineData(10, 1.5, 8.376)]
    [InlineData(10, 1.25, 8.647)]
    public void Half_the_depth_is_half_of_what_is_printed(double diameter, double pitch, double minor) =>
        Assert.Equal((diameter - minor) / 2, ThreadFits.HalfDepth * pitch, 0.0005);

    private static ThreadFit Between(string one, string other) =>
        ThreadFits.Between(ThreadDesignation.Parse(one)!, ThreadDesignation.Parse(other)!);
}
