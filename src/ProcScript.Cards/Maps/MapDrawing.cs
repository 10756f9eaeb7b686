using System.Globalization;
using System.Text;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Templating;

namespace ProcScript.Cards.Maps;

/// <summary>
/// Draws the map: a row for each part, strictly in the order of coming off, and beside the rows lines with arrows from parts that hide others to
/// those. It is as wide as half a sheet where titles and lines find room there. A long map goes on, on further sheets.
/// </summary>
internal static class MapDrawing
{
    // Beyond that a drawing tells a reader nothing that the table beside it does not.
    private const int MostParts = 300;
    private const int MostLanes = 40;

    private const int RowsOnSheet = 40;
    private const int WholeWidth = 720;
    private const int HalfWidth = 420;
    private const int LeastBox = 18;
    private const int EndsApart = 6;
    private const int Gap = 4;
    private const int LaneWidth = 14;
    private const int LeastRows = 430;
    private const int Margin = 14;
    private const int Letters = 46;

    // What a letter of the drawing's type takes, its wide ones among them.
    private const double LetterWidth = 7.6;

    /// <summary>
    /// The drawings for a pack, a sheet each, as <c>svg</c> elements in which parts lead to their steps; none where there is nothing to draw or too much.
    /// </summary>
    public static IEnumerable<string> Sheets(PlanMap map, Wordbook? book = null) => Draw(map, RowsOnSheet, isLinked: true, book ?? Wordbook.English);

    /// <summary>The whole map in one drawing that stands alone, and so leads nowhere; empty where there is nothing to draw or too much.</summary>
    public static string Svg(PlanMap map, Wordbook? book = null) => Draw(map, MostParts, isLinked: false, book ?? Wordbook.English).FirstOrDefault("");

    private static IEnumerable<string> Draw(PlanMap map, int rowsOnSheet, bool isLinked, Wordbook book)
    {
        var graph = MapGraph.Of(map);
        if (graph.Edges.Count == 0 || graph.Nodes.Count > MostParts || MapLanes.Of(graph) is not { Width: <= MostLanes } lanes)
        {
            yield break;
        }

        var moves = 18 + (int)(LetterWidth * graph.Nodes.Max(node => Move(node, book).Length));
        var titles = 20 + (LetterWidth * graph.Nodes.Max(node => Title(node, book).Length));
        var half = moves + titles + (lanes.Width * LaneWidth) + Margin <= HalfWidth;
        var width = half ? HalfWidth : WholeWidth;
        var apart = half ? LaneWidth : Math.Min(LaneWidth, (WholeWidth - moves - LeastRows - Margin) / (double)lanes.Width);
        Sheet sheet = new(graph, lanes, width, moves, apart, book) { IsLinked = isLinked };
        // Sheets of a like length: a last one of two rows would be a waste.
        var sheets = (graph.Nodes.Count + rowsOnSheet - 1) / rowsOnSheet;
        var rows = (graph.Nodes.Count + sheets - 1) / sheets;
        for (var first = 0; first < graph.Nodes.Count; first += rows)
        {
            yield return sheet.Svg(first, Math.Min(first + rows, graph.Nodes.Count) - 1);
        }
    }

    private static string Move(PlanMapNode node, Wordbook book) => node.Step > 0
        ? string.Create(CultureInfo.InvariantCulture, $"{book.Say(node.Move == "aside" ? "map.aside" : "map.off")} {node.Step}")
        : book.Say("map.stays");

    private static string Title(PlanMapNode node, Wordbook book) => (node.IsGoal ? $"{book.Say("map.goal-mark")} · " : "") + Short(node.Title);

    private static string Short(string title)
    {
        if (title.Length <= Letters)
        {
            return title;
        }

        // Both halves of a surrogate pair stay together.
        return title[..(char.IsHighSurrogate(title[Letters - 2]) ? Letters - 2 : Letters - 1)] + "…";
    }

    /// <param name="graph">The parts.</param>
    /// <param name="lanes">The lines beside them.</param>
    /// <param name="width">The width of the drawing.</param>
    /// <param name="moves">What the words before the rows take of it.</param>
    /// <param name="apart">How far the lines stand from each other.</param>
    /// <param name="book">The words.</param>
    private sealed class Sheet(MapGraph graph, MapLanes lanes, int width, int moves, double apart, Wordbook book)
    {
        private readonly double _right = width - Margin - (lanes.Width * apart);

        /// <summary>Whether parts lead to their steps.</summary>
        public required bool IsLinked { get; init; }

        public string Svg(int first, int last)
        {
            var height = Top(last, first) + BoxHeight(last) + Margin;
            StringBuilder svg = new();
            svg.Append(CultureInfo.InvariantCulture, $"<svg class=\"map{(width == HalfWidth ? " half" : "")}\" viewBox=\"0 0 {width} {height}\" role=\"{(IsLinked ? "group" : "img")}\" aria-label=\"{Notation.Html.Escape(book.Say("map.name"))}\">\n");
            foreach (var lane in lanes.Lanes.Where(lane => lane.First <= last && lane.Last >= first))
            {
                Line(svg, lane, first, last);
            }

            for (var row = first; row <= last; row++)
            {
                Row(svg, graph.Nodes[row], Top(row, first), BoxHeight(row));
            }

            return svg.Append("</svg>").ToString();
        }

        /// <summary>A row at which many lines end is higher, so that each can be told from the next.</summary>
        private int BoxHeight(int row) => Math.Max(LeastBox, EndsApart * (lanes.EndsAt(row).Count + 1));

        private int Top(int row, int first) => Margin + Enumerable.Range(first, row - first).Sum(above => BoxHeight(above) + Gap);

        /// <summary>Where a lane meets a row.</summary>
        private double At(int row, MapLane lane, int first)
        {
            var ends = lanes.EndsAt(row);
            var place = 0;
            while (ends[place] != lane)
            {
                place++;
            }

            return Top(row, first) + (BoxHeight(row) * (place + 1.0) / (ends.Count + 1));
        }

        private void Line(StringBuilder svg, MapLane lane, int first, int last)
        {
            var x = _right + ((lane.Place + 1) * apart);
            var bottom = Top(last, first) + BoxHeight(last) + (Margin / 2.0);
            List<int> rows = [.. lane.Fronts, .. lane.Behind];
            var here = rows.Where(row => row >= first && row <= last).Select(row => At(row, lane, first)).ToList();
            var from = lane.First < first ? Margin / 2.0 : here.Min();
            var to = lane.Last > last ? bottom : here.Max();
            svg.Append(CultureInfo.InvariantCulture, $"<path class=\"map-line\" d=\"M{x:0.#} {from:0.#}V{to:0.#}");
            foreach (var row in rows.Where(row => row >= first && row <= last))
            {
                svg.Append(CultureInfo.InvariantCulture, $"M{x:0.#} {At(row, lane, first):0.#}H{_right:0.#}");
            }

            svg.Append("\"/>\n");
            foreach (var row in lane.Behind.Where(row => row >= first && row <= last))
            {
                var y = At(row, lane, first);
                svg.Append(CultureInfo.InvariantCulture, $"<path class=\"map-tip\" d=\"M{_right:0.#} {y:0.#}l7 -3v6z\"/>");
                svg.Append(CultureInfo.InvariantCulture, $"<circle class=\"map-tip\" cx=\"{x:0.#}\" cy=\"{y:0.#}\" r=\"2\"/>\n");
            }

            if (lane.First < first)
            {
                svg.Append(CultureInfo.InvariantCulture, $"<text class=\"map-on\" x=\"{x:0.#}\" y=\"{(Margin / 2.0) - 1:0.#}\">{Label(lane, first)}</text>\n");
            }
        }

        /// <summary>What a line that comes from another sheet is known by: the first part there that it comes from.</summary>
        private string Label(MapLane lane, int first) =>
            lane.Fronts.Where(front => front < first).Select(front => graph.Nodes[front].Step).FirstOrDefault(step => step > 0) is > 0 and var step
                ? step.ToString(CultureInfo.InvariantCulture)
                : "·";

        private void Row(StringBuilder svg, PlanMapNode node, int top, int boxHeight)
        {
            var move = node.Move switch { "off" => "map-off", "aside" => "map-aside", _ => "map-stays" };
            var middle = top + (boxHeight / 2.0) + 4.5;
            var leads = IsLinked && node.Step > 0;
            svg.Append(leads ? string.Create(CultureInfo.InvariantCulture, $"<a href=\"#step-{node.Step}\">") : "");
            svg.Append(CultureInfo.InvariantCulture, $"<g class=\"map-part {move}{(node.IsGoal ? " map-goal" : "")}\">");
            svg.Append(CultureInfo.InvariantCulture, $"<text class=\"map-step\" x=\"{moves - 8}\" y=\"{middle:0.#}\">{Notation.Html.Escape(Move(node, book))}</text>");
            svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{moves}\" y=\"{top}\" width=\"{_right - moves:0.#}\" height=\"{boxHeight}\" rx=\"3\"/>");
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{moves + 10}\" y=\"{middle:0.#}\">{Notation.Html.Escape(Title(node, book))}</text></g>");
            svg.Append(leads ? "</a>\n" : "\n");
        }
    }
}
