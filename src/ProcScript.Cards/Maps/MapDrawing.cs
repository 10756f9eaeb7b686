using System.Globalization;
using System.Text;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Templating;

namespace ProcScript.Cards.Maps;

/// <summary>Draws the map: boxes from the first that comes off down to the last, arrows from what hides to what is hidden.</summary>
internal static class MapDrawing
{
    // Beyond that a drawing tells a reader nothing that the table beside it does not.
    private const int MostParts = 80;
    private const int MostLines = 400;

    private const int PartsAcross = 4;
    private const int BoxWidth = 168;
    private const int BoxHeight = 64;
    private const int LineWidth = 18;
    private const int GapAcross = 16;
    private const int GapDown = 44;
    private const int Margin = 4;
    private const int LineHeight = 15;

    /// <summary>The drawing as one <c>svg</c> element; empty where there is nothing to draw or too much.</summary>
    public static string Svg(PlanMap map)
    {
        var graph = MapGraph.Of(map);
        return graph.Nodes.Count is 0 or > MostParts || graph.Edges.Count > MostLines ? "" : Draw(graph);
    }

    private static string Draw(MapGraph graph)
    {
        var layers = MapLayers.Of(graph, PartsAcross);
        var width = layers.Layers.Max(layer => WidthOf(layer, graph)) + (2 * Margin);
        var height = (layers.Layers.Count * (BoxHeight + GapDown)) - GapDown + (2 * Margin);
        var centres = Centres(graph, layers, width);

        StringBuilder svg = new();
        svg.Append(CultureInfo.InvariantCulture, $"<svg class=\"map\" viewBox=\"0 0 {width} {height}\" role=\"img\" aria-labelledby=\"map-name\">\n");
        svg.Append("<title id=\"map-name\">What hides what, and the order it comes off; the table says the same</title>\n");
        svg.Append("<defs><marker id=\"map-arrow\" viewBox=\"0 0 8 8\" refX=\"7\" refY=\"4\" markerWidth=\"8\" markerHeight=\"8\" orient=\"auto-start-reverse\"><path d=\"M0 0 8 4 0 8z\"/></marker></defs>\n");
        foreach (var (edge, route) in graph.Edges.Zip(layers.Routes))
        {
            AppendLine(svg, edge, route, centres);
        }

        for (var node = 0; node < graph.Nodes.Count; node++)
        {
            AppendBox(svg, graph.Nodes[node], centres[node]);
        }

        return svg.Append("</svg>").ToString();
    }

    private static int WidthOf(IReadOnlyList<int> layer, MapGraph graph) =>
        layer.Sum(place => WidthOf(place, graph) + GapAcross) - GapAcross;

    private static int WidthOf(int place, MapGraph graph) => place < graph.Nodes.Count ? BoxWidth : LineWidth;

    private static Dictionary<int, (int X, int Y)> Centres(MapGraph graph, MapLayers layers, int width)
    {
        Dictionary<int, (int, int)> centres = [];
        for (var layer = 0; layer < layers.Layers.Count; layer++)
        {
            var left = (width - WidthOf(layers.Layers[layer], graph)) / 2;
            var middle = Margin + (layer * (BoxHeight + GapDown)) + (BoxHeight / 2);
            foreach (var place in layers.Layers[layer])
            {
                centres[place] = (left + (WidthOf(place, graph) / 2), middle);
                left += WidthOf(place, graph) + GapAcross;
            }
        }

        return centres;
    }

    private static void AppendLine(StringBuilder svg, MapLink edge, IReadOnlyList<int> route, Dictionary<int, (int X, int Y)> centres)
    {
        var (x, y) = centres[route[0]];
        svg.Append(CultureInfo.InvariantCulture, $"<path class=\"map-line\" d=\"M{x} {y + (BoxHeight / 2)}");
        foreach (var place in route.Skip(1))
        {
            var (nextX, nextY) = centres[place];
            var (from, to) = (y + (BoxHeight / 2), nextY - (BoxHeight / 2));
            var bend = (from + to) / 2;
            svg.Append(CultureInfo.InvariantCulture, $"C{x} {bend} {nextX} {bend} {nextX} {to}");
            if (place != route[^1])
            {
                svg.Append(CultureInfo.InvariantCulture, $"V{to + BoxHeight}");
            }

            (x, y) = (nextX, nextY);
        }

        svg.Append(edge.Front < edge.Behind ? "\" marker-end=\"url(#map-arrow)\"/>\n" : "\" marker-start=\"url(#map-arrow)\"/>\n");
    }

    private static void AppendBox(StringBuilder svg, PlanMapNode node, (int X, int Y) centre)
    {
        var move = node.Move switch { "off" => "map-off", "aside" => "map-aside", _ => "map-stays" };
        svg.Append(CultureInfo.InvariantCulture, $"<g class=\"map-part {move}{(node.IsGoal ? " map-goal" : "")}\">");
        svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{centre.X - (BoxWidth / 2)}\" y=\"{centre.Y - (BoxHeight / 2)}\" width=\"{BoxWidth}\" height=\"{BoxHeight}\" rx=\"3\"/>");
        var title = WrappedLabel.Lines(node.Title);
        var top = centre.Y - ((title.Count + 1) * LineHeight / 2) + LineHeight - 3;
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{centre.X}\" y=\"{top}\">");
        for (var line = 0; line < title.Count; line++)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<tspan x=\"{centre.X}\" dy=\"{(line == 0 ? 0 : LineHeight)}\">{Notation.Html.Escape(title[line])}</tspan>");
        }

        svg.Append(CultureInfo.InvariantCulture, $"<tspan class=\"map-move\" x=\"{centre.X}\" dy=\"{LineHeight}\">{Move(node)}</tspan></text></g>\n");
    }

    private static string Move(PlanMapNode node) => node.IsGoal ? $"GOAL · {MapRow.MoveOf(node)}" : MapRow.MoveOf(node);
}
