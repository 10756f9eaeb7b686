using System.Collections.Immutable;
using AngleSharp.Html.Parser;
using CsCheck;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Maps;

namespace ProcScript.Cards.Tests.Maps;

public sealed class MapTests
{
    private static readonly Gen<PlanMap> AnyMap =
        from count in Gen.Int[1, 25]
        from edges in Gen.Select(Gen.Int[0, count - 1], Gen.Int[0, count - 1]).Array[0, 40]
        select new PlanMap(
            [.. Enumerable.Range(0, count).Select(node => new PlanMapNode($"p{node}", $"part {node}", node, node % 3 == 0 ? "aside" : "off", node == count - 1))],
            [.. edges.Select(edge => new PlanMapEdge($"p{edge.Item1}", $"p{edge.Item2}"))]);

    [Fact]
    public void Every_part_has_one_place_below_all_that_come_off_before_it() => AnyMap.Sample(map =>
    {
        var graph = MapGraph.Of(map);

        var layers = MapLayers.Of(graph, 4);

        var layerOf = layers.Layers.SelectMany((layer, at) => layer.Select(place => (place, at))).ToDictionary(pair => pair.place, pair => pair.at);
        Assert.All(Enumerable.Range(0, graph.Nodes.Count), node => Assert.Contains(node, layerOf));
        Assert.All(graph.Edges, edge => Assert.True(layerOf[edge.Upper] < layerOf[edge.Lower]));
        Assert.All(layers.Layers, layer => Assert.InRange(layer.Count(place => place < graph.Nodes.Count), 0, 4));
        Assert.All(layers.Routes, route => Assert.All(route.Zip(route.Skip(1)), pair => Assert.Equal(layerOf[pair.First] + 1, layerOf[pair.Second])));
    });

    [Fact]
    public void Crossings_are_counted_as_pairs_of_lines_would_be() => AnyMap.Sample(map =>
    {
        var graph = MapGraph.Of(map);
        var layers = MapLayers.Of(graph, 4);
        var at = layers.Layers.SelectMany(layer => layer.Select((place, index) => (place, index))).ToDictionary(pair => pair.place, pair => pair.index);
        var below = layers.Layers.SelectMany(layer => layer).ToDictionary(place => place, _ => new List<int>());
        foreach (var (upper, lower) in layers.Routes.SelectMany(route => route.Zip(route.Skip(1))))
        {
            below[upper].Add(lower);
        }

        var pairs = layers.Layers.Sum(layer =>
        {
            var lines = layer.SelectMany(upper => below[upper].Select(lower => (From: at[upper], To: at[lower]))).ToList();
            return lines.SelectMany((line, index) => lines.Skip(index + 1).Select(other => (line, other)))
                .Count(both => (both.line.From - both.other.From) * (both.line.To - both.other.To) < 0);
        });

        Assert.Equal(pairs, LayerCrossings.Count(layers.Layers, [.. Enumerable.Range(0, below.Count).Select(place => below[place])]));
    });

    [Fact]
    public void Two_lines_that_need_not_cross_do_not()
    {
        PlanMap map = new(
            [.. "abcd".Select((name, at) => new PlanMapNode($"{name}", $"{name}", at, "off", false))],
            [new PlanMapEdge("a", "d"), new PlanMapEdge("b", "c")]);
        var graph = MapGraph.Of(map);

        var layers = MapLayers.Of(graph, 2);

        var (first, second) = (layers.Layers[0], layers.Layers[1]);
        Assert.Equal(first[0] == 0 ? 3 : 2, second[0]);
    }

    [Fact]
    public void Boxes_do_not_overlap_and_lie_within_the_drawing() => AnyMap.Sample(map =>
    {
        var drawing = new HtmlParser().ParseDocument(MapDrawing.Svg(map)).QuerySelector("svg")!;

        var size = drawing.GetAttribute("viewBox")!.Split(' ').Select(int.Parse).ToArray();
        var boxes = drawing.QuerySelectorAll("rect").Select(rect => (X: int.Parse(rect.GetAttribute("x")!, null), Y: int.Parse(rect.GetAttribute("y")!, null), W: int.Parse(rect.GetAttribute("width")!, null), H: int.Parse(rect.GetAttribute("height")!, null))).ToList();
        Assert.Equal(map.Nodes.Length, boxes.Count);
        Assert.All(boxes, box => Assert.True(box.X >= 0 && box.Y >= 0 && box.X + box.W <= size[2] && box.Y + box.H <= size[3]));
        Assert.All(boxes.SelectMany((box, at) => boxes.Skip(at + 1).Select(other => (box, other))), pair =>
            Assert.True(pair.box.X + pair.box.W <= pair.other.X || pair.other.X + pair.other.W <= pair.box.X || pair.box.Y != pair.other.Y));
    }, iter: 100);

    [Fact]
    public void A_part_that_hides_itself_or_is_not_there_draws_no_line()
    {
        PlanMap map = new([new PlanMapNode("a", "a", 1, "off", false)], [new PlanMapEdge("a", "a"), new PlanMapEdge("a", "gone"), new PlanMapEdge("gone", "a")]);

        Assert.Empty(MapGraph.Of(map).Edges);
        Assert.Empty(Assert.Single(MapRow.Of(map)).HiddenBy);
    }

    [Fact]
    public void Too_much_for_a_drawing_is_left_to_the_table()
    {
        ImmutableArray<PlanMapNode> nodes = [.. Enumerable.Range(0, 2000).Select(node => new PlanMapNode($"p{node}", $"part {node}", node, "off", false))];
        PlanMap map = new(nodes, [.. nodes.Skip(1).Select(node => new PlanMapEdge("p0", node.Name))]);

        Assert.Equal("", MapDrawing.Svg(map));
        Assert.Equal(2000, MapRow.Of(map).Count());
    }

    [Theory]
    [InlineData("seat", "seat")]
    [InlineData("overhead console with the radio", "overhead console|with the radio")]
    [InlineData("Donaudampfschifffahrtsgesellschaft", "Donaudampfschifffah|rtsgesellschaft")]
    [InlineData("aaaaaaaaaaaaaaaaaa bbbbbbbbbbbbbbbbbb cccccccccccccccccc dddd", "aaaaaaaaaaaaaaaaaa|bbbbbbbbbbbbbbbbbb|cccccccccccccccccc…")]
    [InlineData("", "")]
    public void A_title_is_broken_into_the_lines_of_a_box(string title, string lines) => Assert.Equal(lines, string.Join('|', WrappedLabel.Lines(title)));

    [Fact]
    public void No_letter_is_torn_apart_by_a_line_break() => Gen.OneOf("😀", "a", " ", "é").Array[0, 120].Select(string.Concat).Sample(title =>
        Assert.All(WrappedLabel.Lines(title), line => Assert.False((line.Length > 0 && char.IsLowSurrogate(line[0])) || (line.Length > 0 && char.IsHighSurrogate(line[^1])))));
}
