using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Maps;

/// <summary>The map as a file of its own, with the little style that it needs.</summary>
internal static class MapFile
{
    private const string Opening = "<svg ";

    private const string Style =
        """
        <style>
        .map { font: 13px sans-serif; background: #fff; }
        .map rect { fill: #fff; stroke: #222; stroke-width: 1.5; }
        .map text { font-weight: 600; fill: #111; }
        .map .map-step { text-anchor: end; }
        .map .map-on { text-anchor: middle; font-size: 9px; }
        .map .map-line { fill: none; stroke: #444; stroke-width: 1.2; }
        .map .map-tip { fill: #444; }
        .map .map-aside rect { stroke-dasharray: 6 4; }
        .map .map-stays rect { stroke-dasharray: 1.5 3; }
        .map .map-goal rect { stroke-width: 3.5; }
        </style>

        """;

    /// <summary>The SVG; empty where there is nothing to draw or too much.</summary>
    public static string Svg(PlanMap map, Wordbook book)
    {
        var drawing = MapDrawing.Svg(map, book);
        if (drawing.Length == 0)
        {
            return "";
        }

        var head = drawing.IndexOf('\n', StringComparison.Ordinal) + 1;
        return $"<svg xmlns=\"http://www.w3.org/2000/svg\" {drawing[Opening.Length..head]}{Style}{drawing[head..]}\n";
    }
}
