using System.Globalization;
using System.Net;
using System.Text;
using ProcScript.Analysis.Reaching;

namespace ProcScript.Cards.Maps;

/// <summary>
/// Draws a whole machine: a column of parts for each layer, the outermost on the left. Same map, same characters out. Of many parts the boxes become
/// small and keep their titles for the pointer; lines are drawn as long as anybody can follow them.
/// </summary>
public static class MachineMapText
{
    private const int MostLines = 400;
    /// <summary>Up to how many parts the boxes are large and the list of the page stands open.</summary>
    internal const int FewParts = 150;
    private const int RowsInColumn = 40;

    /// <summary>The colours of the states: each also has a word, and a border of its own.</summary>
    private static readonly Dictionary<string, string> Fills = new(StringComparer.Ordinal)
    {
        ["fitted"] = "#ffffff",
        ["free"] = "#e2f3e2",
        ["aside"] = "#fff2cc",
        ["out"] = "#e4e4e4",
        ["temporary"] = "#f1f1f1",
    };

    /// <summary>As an SVG drawing; each part is a link to its entry, for a page that has one.</summary>
    public static string Svg(MachineMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        var isLarge = map.Parts.Length > FewParts;
        var (width, height, gap) = isLarge ? (92, 14, 4) : (210, 26, 10);
        var places = new Dictionary<string, (int X, int Y)>(StringComparer.Ordinal);
        var (column, tallest) = (0, 0);
        StringBuilder boxes = new();
        foreach (var layer in map.Parts.GroupBy(part => part.Layer))
        {
            var parts = layer.ToList();
            var left = 20 + (column * (width + 40));
            boxes.Append(CultureInfo.InvariantCulture, $"<text class=\"layer\" x=\"{left}\" y=\"44\">{(layer.Key < 0 ? "never off" : $"layer {layer.Key + 1}")}, {parts.Count}</text>\n");
            foreach (var (index, part) in parts.Index())
            {
                var (x, y) = (20 + ((column + (index / RowsInColumn)) * (width + 40)), 56 + (index % RowsInColumn * (height + gap)));
                places[part.Name] = (x, y);
                tallest = Math.Max(tallest, y + height);
                boxes.Append(Box(part, x, y, width, height, isLarge));
            }

            column += ((parts.Count - 1) / RowsInColumn) + 1;
        }

        StringBuilder lines = new();
        foreach (var edge in map.Edges.Length > MostLines ? [] : map.Edges)
        {
            if (places.TryGetValue(edge.From, out var from) && places.TryGetValue(edge.To, out var to))
            {
                lines.Append(CultureInfo.InvariantCulture, $"<path class=\"{(edge.IsChoice ? "choice" : "hides")}\" d=\"M{from.X + width} {from.Y + (height / 2)} C{from.X + width + 20} {from.Y + (height / 2)} {to.X - 20} {to.Y + (height / 2)} {to.X} {to.Y + (height / 2)}\" marker-end=\"url(#arrow)\"/>\n");
            }
        }

        var note = map.Edges.Length > MostLines ? $" {map.Edges.Length.ToString(CultureInfo.InvariantCulture)} lines are left out; the list has them." : "";
        var (whole, type) = (40 + (column * (width + 40)), isLarge ? 8 : 12);
        return string.Create(CultureInfo.InvariantCulture, $$"""
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {{whole}} {{tallest + 20}}" width="{{whole}}" role="group" aria-label="{{Text(map.Title)}}">
            <title>{{Text(map.Title)}}</title>
            <style>text{font:{{type}}px sans-serif} .head{font-size:15px;font-weight:bold} .layer{font-weight:bold} path{fill:none;stroke:#666} .choice{stroke-dasharray:4 3} rect{stroke:#333} .out rect{stroke-dasharray:2 2} .free rect{stroke-width:2}</style>
            <defs><marker id="arrow" viewBox="0 0 6 6" refX="6" refY="3" markerWidth="6" markerHeight="6" orient="auto"><path d="M0 0 L6 3 L0 6" style="fill:#666"/></marker></defs>
            <text class="head" x="20" y="22">{{Text(map.Title)}}: the order of coming off, left to right.{{note}}</text>
            {{lines}}{{boxes}}</svg>

            """);
    }

    private static string Box(MappedPart part, int x, int y, int width, int height, bool isLarge)
    {
        var letters = isLarge ? 18 : 30;
        var title = part.Title.Length > letters ? part.Title[..(letters - 1)] + "…" : part.Title;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"<a href=\"#{Id(part.Name)}\" class=\"{part.State}\"><title>{Text(part.Title)}: {part.State}</title><rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" rx=\"3\" fill=\"{Fills[part.State]}\"/><text x=\"{x + 5}\" y=\"{y + height - (isLarge ? 4 : 9)}\">{Text(title)}{(part.State is "fitted" or "free" || isLarge ? "" : $" ({part.State})")}</text></a>\n");
    }

    /// <summary>As a graph in the DOT language.</summary>
    public static string Dot(MachineMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        StringBuilder text = new($"digraph {Quoted(map.Machine)} {{\n  label={Quoted(map.Title)};\n  rankdir=LR;\n  node [shape=box, style=filled, fontname=\"sans-serif\"];\n");
        foreach (var layer in map.Parts.GroupBy(part => part.Layer))
        {
            text.Append("  { rank=same;\n");
            foreach (var part in layer)
            {
                text.Append(CultureInfo.InvariantCulture, $"    {Quoted(part.Name)} [label={Quoted(part.Title)}, fillcolor=\"{Fills[part.State]}\", tooltip={Quoted(part.State)}];\n");
            }

            text.Append("  }\n");
        }

        foreach (var edge in map.Edges)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {Quoted(edge.From)} -> {Quoted(edge.To)}{(edge.IsChoice ? " [style=dashed]" : "")};\n");
        }

        return text.Append("}\n").ToString();
    }

    /// <summary>As a Mermaid flow chart.</summary>
    public static string Mermaid(MachineMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        StringBuilder text = new("flowchart LR\n");
        foreach (var layer in map.Parts.GroupBy(part => part.Layer))
        {
            text.Append(CultureInfo.InvariantCulture, $"  subgraph layer{layer.Key + 1}[\"{(layer.Key < 0 ? "never off" : $"layer {layer.Key + 1}")}\"]\n");
            foreach (var part in layer)
            {
                text.Append(CultureInfo.InvariantCulture, $"    {Id(part.Name)}[\"{part.Title.Replace("\"", "#quot;", StringComparison.Ordinal)}\"]:::{part.State}\n");
            }

            text.Append("  end\n");
        }

        foreach (var edge in map.Edges)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {Id(edge.From)} {(edge.IsChoice ? "-.->" : "-->")} {Id(edge.To)}\n");
        }

        foreach (var (state, fill) in Fills)
        {
            text.Append(CultureInfo.InvariantCulture, $"  classDef {state} fill:{fill}\n");
        }

        return text.ToString();
    }

    /// <summary>A name that stands in addresses: <c>door[left]</c> is <c>part-door-left</c>.</summary>
    internal static string Id(string name)
    {
        StringBuilder id = new("part-");
        foreach (var letter in name)
        {
            id.Append(char.IsLetterOrDigit(letter) || letter == '_' ? letter : letter is ' ' or ']' ? "" : "-");
        }

        return id.ToString();
    }

    private static string Quoted(string text) => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    internal static string Text(string text) => WebUtility.HtmlEncode(text);
}
