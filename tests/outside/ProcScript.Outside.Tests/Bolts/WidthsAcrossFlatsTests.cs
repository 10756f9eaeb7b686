using System.Globalization;
using ProcScript.Analysis.Bolts;

namespace ProcScript.Outside.Tests.Bolts;

/// <summary>Sizes of hexagons and hexagon sockets against printed tables.</summary>
public sealed class WidthsAcrossFlatsTests
{
    /// <summary>
    /// ISO 4014/4017 heads, the heads before ISO 272:1982 and ISO 4762 sockets, M4 to M16 (machinecalcs.com, mlc.org.uk and an encyclopedia;
    /// read in place). Today's size comes first.
    /// </summary>
    [Fact]
    public void Metric_heads_are_what_is_printed()
    {
        var rows = ReferenceData.Rows("width-across-flats.txt");
        foreach (var row in rows)
        {
            var thread = ThreadDesignation.Parse(row[0])!;
            Assert.Equal(Value(row[1]), WidthsAcrossFlats.Hexagons(thread)[0]);
            Assert.Contains(Value(row[2]), WidthsAcrossFlats.Hexagons(thread));
            Assert.Equal(Value(row[3]), WidthsAcrossFlats.Sockets(thread)[0]);
        }

        Assert.Equal(8, rows.Count);
    }

    /// <summary>Inch hexagon heads (the same tables; read).</summary>
    [Theory]
    [InlineData("1/4-20", 7.0 / 16)]
    [InlineData("5/16-18", 1.0 / 2)]
    [InlineData("3/8-16", 9.0 / 16)]
    [InlineData("7/16-14", 5.0 / 8)]
    [InlineData("1/2-13", 3.0 / 4)]
    public void Inch_heads_are_what_is_printed(string thread, double inches) =>
        Assert.Equal(inches, WidthsAcrossFlats.Hexagons(ThreadDesignation.Parse(thread)!)[0] / 25.4, 1e-9);

    private static double Value(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
