using System.Collections.Frozen;
using System.Collections.Immutable;

namespace ProcScript.Analysis.Bolts;

/// <summary>
/// The sizes of tools that fit the heads of a thread, in mm. Read: hexagon heads of ISO 4014/4017 M4 to M16 with their sizes before ISO
/// 272:1982, socket heads of ISO 4762 M4 to M16, inch hexagon heads 1/4 to 1/2 in (machinecalcs.com, mlc.org.uk and an encyclopedia). From
/// memory: all other threads; flange bolts and small heads (ISO 4162, EN 1662); the small hexagons of Japanese machines; heavy hexagons
/// (1 1/2 d + 1/8 in); machine screw nuts; and, of sockets, button and countersunk heads and set screws (ISO 7380, 10642, 4026 and ASME
/// B18.3).
/// </summary>
public static class WidthsAcrossFlats
{
    /// <summary>A tool may be so much larger than the head, as 13 mm is on 1/2 in.</summary>
    private const double Play = 0.35;

    /// <summary>A tool may be so much smaller by its marking, as 11 mm is on 7/16 in.</summary>
    private const double Press = 0.15;

    /// <summary>Metric diameter; hexagons, the first one today's standard head; hexagon sockets, the first one a cap screw's.</summary>
    private static readonly FrozenDictionary<double, Sizes> Metric = new (double Diameter, double[] Hexagons, double[] Sockets)[]
    {
        (3, [5.5], [2.5, 2, 1.5]),
        (4, [7], [3, 2.5, 2]),
        (5, [8, 7], [4, 3, 2.5]),
        (6, [10, 8], [5, 4, 3]),
        (8, [13, 12, 10], [6, 5, 4]),
        (10, [16, 17, 15, 14, 13], [8, 7, 6, 5]),
        (12, [18, 19, 17, 16, 15, 21, 22], [10, 8, 6]),
        (14, [21, 22, 19, 18], [12, 10, 6]),
        (16, [24, 27, 22, 21], [14, 12, 10, 8]),
        (18, [27, 26], [14, 12]),
        (20, [30, 32, 27], [17, 14, 12, 10]),
        (22, [34, 32, 36], [17, 14]),
        (24, [36, 41, 34], [19, 17, 14, 12]),
    }.ToFrozenDictionary(one => one.Diameter, one => new Sizes([.. one.Hexagons], [.. one.Sockets]));

    /// <summary>Inch diameter; hexagons and hexagon sockets in inches, in the same order.</summary>
    private static readonly FrozenDictionary<double, Sizes> Fractional = new (double Inches, double[] Hexagons, double[] Sockets)[]
    {
        (0.25, [7.0 / 16, 3.0 / 8, 1.0 / 2], [3.0 / 16, 5.0 / 32, 1.0 / 8]),
        (0.3125, [1.0 / 2, 9.0 / 16], [1.0 / 4, 3.0 / 16, 5.0 / 32]),
        (0.375, [9.0 / 16, 11.0 / 16], [5.0 / 16, 7.0 / 32, 3.0 / 16]),
        (0.4375, [5.0 / 8, 11.0 / 16, 3.0 / 4], [3.0 / 8, 1.0 / 4, 7.0 / 32]),
        (0.5, [3.0 / 4, 7.0 / 8], [3.0 / 8, 5.0 / 16, 1.0 / 4]),
        (0.5625, [13.0 / 16, 7.0 / 8], [7.0 / 16, 1.0 / 4]),
        (0.625, [15.0 / 16, 17.0 / 16], [1.0 / 2, 3.0 / 8, 5.0 / 16]),
        (0.75, [9.0 / 8, 5.0 / 4], [5.0 / 8, 1.0 / 2, 3.0 / 8]),
    }.ToFrozenDictionary(one => one.Inches, one => InInches(one.Hexagons, one.Sockets));

    /// <summary>Screw number; hexagons and hexagon sockets in inches, in the same order.</summary>
    private static readonly FrozenDictionary<int, Sizes> Numbered = new (int Number, double[] Hexagons, double[] Sockets)[]
    {
        (6, [1.0 / 4, 5.0 / 16], [7.0 / 64, 5.0 / 64, 1.0 / 16]),
        (8, [1.0 / 4, 11.0 / 32], [9.0 / 64, 3.0 / 32, 5.0 / 64]),
        (10, [5.0 / 16, 3.0 / 8], [5.0 / 32, 1.0 / 8, 3.0 / 32]),
    }.ToFrozenDictionary(one => one.Number, one => InInches(one.Hexagons, one.Sockets));

    /// <summary>The sizes of hexagon heads and nuts, the standard one first; empty where none are known.</summary>
    /// <param name="thread">The thread.</param>
    public static ImmutableArray<double> Hexagons(ThreadDesignation thread) => Of(thread)?.Hexagons ?? [];

    /// <summary>The sizes of keys for hexagon sockets, that of a cap screw first; empty where none are known.</summary>
    /// <param name="thread">The thread.</param>
    public static ImmutableArray<double> Sockets(ThreadDesignation thread) => Of(thread)?.Sockets ?? [];

    /// <summary>Whether a tool fits a head.</summary>
    /// <param name="tool">The size of the tool in mm.</param>
    /// <param name="head">The size of the head in mm.</param>
    public static bool Fits(double tool, double head) => tool >= head - Press && tool <= head + Play;

    private static Sizes? Of(ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return thread switch
        {
            { System: ThreadSystem.Metric } => Metric.GetValueOrDefault(thread.Diameter),
            { Number: { } number } => Numbered.GetValueOrDefault(number),
            _ => Fractional.GetValueOrDefault(Math.Round(thread.Diameter / ThreadDesignation.Inch, 6)),
        };
    }

    private static Sizes InInches(double[] hexagons, double[] sockets) =>
        new([.. hexagons.Select(size => size * ThreadDesignation.Inch)], [.. sockets.Select(size => size * ThreadDesignation.Inch)]);

    private sealed record Sizes(ImmutableArray<double> Hexagons, ImmutableArray<double> Sockets);
}
