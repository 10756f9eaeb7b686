using AngleSharp.Html.Parser;
using CsCheck;
using ProcScript.Cards.Figures;

namespace ProcScript.Cards.Tests.Figures;

public sealed class TighteningOrderTests
{
    private static readonly Gen<int> AnyCount = Gen.Int[3, 40];

    [Fact]
    public void Crosswise_every_place_comes_once() => AnyCount.Sample(count => Assert.Equal(Enumerable.Range(0, count), TighteningOrder.Star(count).Order()));

    [Fact]
    public void Of_an_even_number_each_second_one_lies_straight_across() => AnyCount.Where(count => count % 2 == 0).Sample(count =>
        Assert.All(TighteningOrder.Star(count).Chunk(2), pair => Assert.Equal(count / 2, Math.Abs(pair[0] - pair[1]))));

    [Fact]
    public void Of_an_odd_number_each_one_lies_as_far_across_as_it_can() => AnyCount.Where(count => count % 2 == 1).Sample(count =>
    {
        var order = TighteningOrder.Star(count);
        Assert.All(order.Zip(order.Skip(1)), pair => Assert.Contains(Math.Abs(pair.First - pair.Second), new[] { count / 2, (count / 2) + 1 }));
    });

    [Theory]
    [InlineData(4, "0 2 1 3")]
    [InlineData(5, "0 2 4 1 3")]
    [InlineData(6, "0 3 1 4 2 5")]
    [InlineData(8, "0 4 2 6 1 5 3 7")]
    public void Usual_numbers_come_in_the_usual_order(int count, string order) => Assert.Equal(order, string.Join(' ', TighteningOrder.Star(count)));

    [Fact]
    public void From_the_middle_outwards_no_later_one_lies_nearer_to_the_middle() => AnyCount.Sample(count =>
    {
        var order = TighteningOrder.InsideOut(count);
        var middle = ((count / TighteningOrder.RowsOf(count)) - 1) / 2.0;

        Assert.Equal(count, order.Distinct().Count());
        Assert.All(order.Zip(order.Skip(1)), pair => Assert.True(Math.Abs(pair.First.Column - middle) <= Math.Abs(pair.Second.Column - middle)));
    });

    [Fact]
    public void The_drawing_has_each_number_once_and_no_two_fasteners_touch() => Gen.Select(AnyCount, Gen.Bool.Select(isStar => isStar ? "star" : "inside out")).Sample((count, pattern) =>
    {
        var drawing = new HtmlParser().ParseDocument(TighteningDrawing.Svg(pattern, count)).QuerySelector("svg")!;
        var heads = drawing.QuerySelectorAll("circle:not(.rim)").Select(circle => (X: Number(circle.GetAttribute("cx")!), Y: Number(circle.GetAttribute("cy")!))).ToList();

        Assert.Equal(Enumerable.Range(1, count).Select(number => $"{number}"), drawing.QuerySelectorAll("text").Select(text => text.TextContent));
        Assert.Equal(count, heads.Count);
        Assert.All(heads.SelectMany((head, at) => heads.Skip(at + 1).Select(other => (head, other))), pair =>
            Assert.True(Math.Pow(pair.head.X - pair.other.X, 2) + Math.Pow(pair.head.Y - pair.other.Y, 2) > 22 * 22));
        Assert.NotEmpty(drawing.GetAttribute("aria-label")!);
    }, iter: 100);

    [Theory]
    [InlineData("listed", 8)]
    [InlineData("", 8)]
    [InlineData("star", 2)]
    [InlineData("star", 41)]
    public void What_nobody_could_read_is_not_drawn(string pattern, int count) => Assert.Equal("", TighteningDrawing.Svg(pattern, count));

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
