using System.Collections.Immutable;
using ProcScript.Model.Catalog;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Bolts;

/// <summary>
/// A tool for hexagons of a stated size. Only its title tells what it is for, so whatever is not clearly one of the two is none.
/// </summary>
/// <param name="Tool">The tool.</param>
/// <param name="Millimetres">Its size in mm.</param>
/// <param name="IsKey">Whether it goes into the head; else it goes over it.</param>
internal sealed record HexagonTool(Tool Tool, double Millimetres, bool IsKey)
{
    private static readonly ImmutableArray<string> Over = ["socket", "spanner", "wrench", "crowfoot"];
    private static readonly ImmutableArray<string> Into = ["bit", "key"];

    private static readonly ImmutableArray<string> Others =
    [
        "torx", "spline", "square", "pin", "hook", "strap", "pipe", "torque", "adjustable", "extension", "adapter", "chain", "filter", "bleed",
        "impact", "ratchet", "universal", "puller", "plug",
    ];

    /// <summary>The tool as one for hexagons; null where its title does not say so or no length is its size.</summary>
    public static HexagonTool? Of(Tool? tool)
    {
        if (tool is not { Size: { Unit.Dimension: Dimension.Length } size })
        {
            return null;
        }

        var words = tool.Title.Split([' ', ',', '-', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        bool Says(ImmutableArray<string> list) => words.Any(word => list.Contains(word, StringComparer.OrdinalIgnoreCase));
        var isKey = Says(Into);
        var saysHexagon = words.Any(word => word.StartsWith("hex", StringComparison.OrdinalIgnoreCase));
        return Says(Others) || (isKey ? !saysHexagon : !Says(Over)) ? null : new HexagonTool(tool, size.BaseValue * 1000, isKey);
    }
}
