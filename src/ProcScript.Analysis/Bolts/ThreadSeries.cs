using System.Collections.Frozen;

namespace ProcScript.Analysis.Bolts;

/// <summary>
/// The series that threads come in: coarse pitches of ISO 261 (M4 to M16 read in a table after EN ISO 898-1, the others from memory) and
/// the coarse and fine threads to the inch of ASME B1.1 (1/4 to 5/8 in read in a table of SAE J429 bolts, the others from memory).
/// </summary>
public static class ThreadSeries
{
    private static readonly FrozenDictionary<double, double> Coarse = new (double Diameter, double Pitch)[]
    {
        (1.6, 0.35), (2, 0.4), (2.5, 0.45), (3, 0.5), (3.5, 0.6), (4, 0.7), (5, 0.8), (6, 1), (7, 1), (8, 1.25), (10, 1.5), (12, 1.75),
        (14, 2), (16, 2), (18, 2.5), (20, 2.5), (22, 2.5), (24, 3), (27, 3), (30, 3.5), (33, 3.5), (36, 4), (39, 4),
    }.ToFrozenDictionary(one => one.Diameter, one => one.Pitch);

    private static readonly FrozenDictionary<int, (double? Coarse, double Fine)> Numbered = new (int Number, double? Coarse, double Fine)[]
    {
        (0, null, 80), (1, 64, 72), (2, 56, 64), (3, 48, 56), (4, 40, 48), (5, 40, 44), (6, 32, 40), (8, 32, 36), (10, 24, 32), (12, 24, 28),
    }.ToFrozenDictionary(one => one.Number, one => (one.Coarse, one.Fine));

    private static readonly FrozenDictionary<double, (double? Coarse, double Fine)> Fractional = new (double Inches, double? Coarse, double Fine)[]
    {
        (0.25, 20, 28), (0.3125, 18, 24), (0.375, 16, 24), (0.4375, 14, 20), (0.5, 13, 20), (0.5625, 12, 18), (0.625, 11, 18), (0.75, 10, 16),
        (0.875, 9, 14), (1, 8, 12), (1.125, 7, 12), (1.25, 7, 12), (1.375, 6, 12), (1.5, 6, 12),
    }.ToFrozenDictionary(one => one.Inches, one => (one.Coarse, one.Fine));

    /// <summary>The coarse pitch in mm of a metric thread, which is also the largest that it has; null where none is known.</summary>
    /// <param name="diameter">The nominal diameter in mm.</param>
    public static double? CoarsePitch(double diameter) => Coarse.TryGetValue(diameter, out var pitch) ? pitch : null;

    /// <summary>The threads to the inch of an inch thread in the coarse and in the fine series; null where none are known. No. 0 has no coarse one.</summary>
    /// <param name="thread">The thread.</param>
    public static (double? Coarse, double Fine)? ThreadsPerInch(ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return thread switch
        {
            { System: ThreadSystem.Metric } => null,
            { Number: { } number } => Numbered.TryGetValue(number, out var numbered) ? numbered : null,
            _ => Fractional.TryGetValue(Math.Round(thread.Diameter / ThreadDesignation.Inch, 6), out var fractional) ? fractional : null,
        };
    }

    /// <summary>Whether a screw size has that many threads to the inch in one of the two series.</summary>
    internal static bool IsNumbered(double number, double perInch) =>
        Numbered.TryGetValue((int)number, out var threads) && (perInch == threads.Coarse || perInch == threads.Fine);
}
