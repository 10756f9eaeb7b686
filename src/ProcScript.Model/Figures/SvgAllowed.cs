using System.Collections.Frozen;

namespace ProcScript.Model.Figures;

/// <summary>
/// What a drawing may be made of (SVG 1.1): shapes, texts, their looks. Everything else is left out, whatever it does.
/// </summary>
internal static class SvgAllowed
{
    /// <summary>The elements.</summary>
    public static FrozenSet<string> Elements { get; } = Words(
        "svg g defs symbol use path rect circle ellipse line polyline polygon text tspan style linearGradient radialGradient stop clipPath marker");

    /// <summary>What is opened up: what stands in it stays.</summary>
    public static FrozenSet<string> Opened { get; } = Words("a");

    /// <summary>What says something about the drawing and draws nothing: nobody is told that it goes.</summary>
    public static FrozenSet<string> Silent { get; } = Words("title desc metadata");

    /// <summary>The attributes, and the properties of <c>style</c>.</summary>
    public static FrozenSet<string> Attributes { get; } = Words(
        """
        id class style viewBox preserveAspectRatio width height x y x1 y1 x2 y2 cx cy r rx ry fx fy d points transform pathLength
        dx dy rotate textLength lengthAdjust offset gradientUnits gradientTransform spreadMethod clipPathUnits
        markerUnits markerWidth markerHeight refX refY orient
        fill fill-opacity fill-rule stroke stroke-width stroke-opacity stroke-linecap stroke-linejoin stroke-miterlimit stroke-dasharray
        stroke-dashoffset opacity color stop-color stop-opacity clip-path clip-rule marker marker-start marker-mid marker-end display visibility
        overflow paint-order vector-effect shape-rendering text-rendering
        font font-family font-size font-style font-weight font-variant font-stretch letter-spacing word-spacing text-anchor text-decoration
        dominant-baseline alignment-baseline baseline-shift writing-mode white-space line-height
        """);

    private static FrozenSet<string> Words(string words) =>
        words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).ToFrozenSet(StringComparer.Ordinal);
}
