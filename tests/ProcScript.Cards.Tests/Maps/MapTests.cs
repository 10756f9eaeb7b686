using System.Collections.Immutable;
using AngleSharp.Html.Parser;
using CsCheck;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Maps;
using ProcScript.Cards.Tests.Samples;

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
    public void Two_lanes_on_one_place_never_pass_a_row_of_each_other() => AnyMap.Sample(map =>
    {
        var graph = MapGraph.Of(map);

        var lanes = MapLanes.Of(graph);

        Assert.Equal(graph.Edges.Order(ByEnds), lanes.Lanes.SelectMany(lane => lane.Fronts.SelectMany(front => lane.Behind.Select(behind => new MapLink(front, behind)))).Order(ByEnds));
        Assert.All(lanes.Lanes.GroupBy(lane => lane.Place), place => Assert.All(
            place.OrderBy(lane => lane.First).Zip(place.OrderBy(lane => lane.First).Skip(1)), pair => Assert.True(pair.First.Last < pair.Second.First)));
    });

    [Fact]
    public void Rows_stand_below_each_other_in_the_order_of_the_plan_and_lines_beside_them() => AnyMap.Where(map => MapGraph.Of(map).Edges.Count > 0).Sample(map =>
    {
        var drawing = Parsed(MapDrawing.Svg(map));

        var size = drawing.GetAttribute("viewBox")!.Split(' ').Select(Number).ToArray();
        var boxes = drawing.QuerySelectorAll("rect").Select(rect => (X: Attribute(rect, "x"), Y: Attribute(rect, "y"), W: Attribute(rect, "width"), H: Attribute(rect, "height"))).ToList();
        Assert.Equal(map.Nodes.Length, boxes.Count);
        Assert.All(boxes, box => Assert.True(box.X >= 0 && box.Y >= 0 && box.W >= 100 && box.X + box.W <= size[2] && box.Y + box.H <= size[3]));
        Assert.All(boxes.Zip(boxes.Skip(1)), pair => Assert.True(pair.First.Y + pair.First.H < pair.Second.Y));
        Assert.All(drawing.QuerySelectorAll(".map-line"), line => Assert.True(Number(line.GetAttribute("d")![1..].Split(' ')[0]) > boxes[0].X + boxes[0].W));
        Assert.Equal(MapLanes.Of(MapGraph.Of(map)).Lanes.Sum(lane => lane.Behind.Count), drawing.QuerySelectorAll("path.map-tip").Length);
    }, iter: 100);

    [Fact]
    public void A_long_map_goes_on_on_further_sheets_and_loses_no_row()
    {
        PlanMap map = new(
            [.. Enumerable.Range(0, 100).Select(node => new PlanMapNode($"p{node}", $"part {node}", node + 1, "off", false))],
            [.. Enumerable.Range(0, 90).Select(node => new PlanMapEdge($"p{node}", $"p{node + 10}"))]);

        var sheets = MapDrawing.Sheets(map).Select(Parsed).ToList();

        Assert.Equal(3, sheets.Count);
        Assert.Equal(map.Nodes.Select(node => $"off {node.Step}"), sheets.SelectMany(sheet => sheet.QuerySelectorAll(".map-step").Select(step => step.TextContent)));
        Assert.All(sheets.Skip(1), sheet => Assert.NotEmpty(sheet.QuerySelectorAll(".map-on")));
    }

    /// <summary>The steps at which parts come off, from the drawing and from the proven strip: one is drawn from the other by code that shares nothing with this.</summary>
    [Theory]
    [MemberData(nameof(Jobs))]
    public void The_map_of_a_demo_pack_stands_in_the_order_of_its_proven_strip(string job)
    {
        var plan = DemoLibrary.Plans[job];
        var titles = plan.Map.Nodes.ToDictionary(node => node.Name, node => node.Title);
        var proven = plan.Strip.SelectMany(stage => stage.Steps)
            .Where(step => step.Verb is "remove" or "aside" && titles.ContainsKey(step.Item))
            .GroupBy(step => step.Item)
            .Select(moves => moves.FirstOrDefault(step => step.Verb == "remove") ?? moves.First())
            .OrderBy(step => step.Number)
            .Select(step => $"{(step.Verb == "aside" ? "aside" : "off")} {step.Number}")
            .ToList();

        var drawn = MapDrawing.Sheets(plan.Map).Select(Parsed).SelectMany(sheet => sheet.QuerySelectorAll(".map-step")).Select(step => step.TextContent).ToList();

        if (drawn.Count > 0)
        {
            Assert.Equal(proven, drawn.Where(words => words != "stays"));
            Assert.Equal(drawn.OrderBy(words => words == "stays"), drawn);
        }

        Assert.Equal(plan.Map.Edges.IsEmpty, drawn.Count == 0);
    }

    [Fact]
    public void Parts_in_front_of_the_same_others_share_one_line_and_one_arrow()
    {
        PlanMap map = new(
            [.. Enumerable.Range(0, 6).Select(node => new PlanMapNode($"p{node}", $"part {node}", node + 1, "off", node == 5))],
            [.. Enumerable.Range(0, 4).Select(node => new PlanMapEdge($"p{node}", "p5")), new PlanMapEdge("p4", "p5"), new PlanMapEdge("p4", "p3")]);

        var lanes = MapLanes.Of(MapGraph.Of(map)).Lanes;

        Assert.Equal([[0, 1, 2, 3], [4]], lanes.Select(lane => lane.Fronts));
        Assert.Equal([[5], [3, 5]], lanes.Select(lane => lane.Behind));
        Assert.Equal(3, Parsed(MapDrawing.Svg(map)).QuerySelectorAll("path.map-tip").Length);
    }

    [Fact]
    public void In_a_pack_a_part_leads_to_its_step_and_alone_a_drawing_leads_nowhere()
    {
        PlanMap map = new(
            [new PlanMapNode("lid", "lid", 3, "off", false), new PlanMapNode("pump", "pump", 0, "stays", true)],
            [new PlanMapEdge("lid", "pump")]);

        var link = Assert.Single(Parsed(Assert.Single(MapDrawing.Sheets(map))).QuerySelectorAll("a"));

        Assert.Equal(("#step-3", "off 3lid"), (link.GetAttribute("href"), link.TextContent));
        Assert.Empty(Parsed(MapDrawing.Svg(map)).QuerySelectorAll("a"));
    }

    private static Comparer<MapLink> ByEnds { get; } = Comparer<MapLink>.Create((one, other) => (one.Front, one.Behind).CompareTo((other.Front, other.Behind)));

    public static TheoryData<string> Jobs => [.. DemoLibrary.Plans.Keys.Order(StringComparer.Ordinal)];

    private static AngleSharp.Dom.IElement Parsed(string drawing) => new HtmlParser().ParseDocument(drawing).QuerySelector("svg")!;

    private static double Attribute(AngleSharp.Dom.IElement element, string name) => Number(element.GetAttribute(name)!);

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

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
}
