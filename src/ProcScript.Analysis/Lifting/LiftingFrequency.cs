using System.Collections.Immutable;

namespace ProcScript.Analysis.Lifting;

/// <summary>
/// The frequency multiplier of the revised NIOSH equation: table 5 of Publication 94-110 (revised 9/2021, in the public domain; read in a
/// stored double-checked transcription). Between two rows it is interpolated, as the publication has it (from memory); what is beyond the last is 0.
/// </summary>
internal static class LiftingFrequency
{
    /// <summary>Lifts a minute, then low and high hands for each duration.</summary>
    private static readonly ImmutableArray<(double PerMinute, double[] Multipliers)> Table =
    [
        (0.2, [1.00, 1.00, 0.95, 0.95, 0.85, 0.85]),
        (0.5, [0.97, 0.97, 0.92, 0.92, 0.81, 0.81]),
        (1, [0.94, 0.94, 0.88, 0.88, 0.75, 0.75]),
        (2, [0.91, 0.91, 0.84, 0.84, 0.65, 0.65]),
        (3, [0.88, 0.88, 0.79, 0.79, 0.55, 0.55]),
        (4, [0.84, 0.84, 0.72, 0.72, 0.45, 0.45]),
        (5, [0.80, 0.80, 0.60, 0.60, 0.35, 0.35]),
        (6, [0.75, 0.75, 0.50, 0.50, 0.27, 0.27]),
        (7, [0.70, 0.70, 0.42, 0.42, 0.22, 0.22]),
        (8, [0.60, 0.60, 0.35, 0.35, 0.18, 0.18]),
        (9, [0.52, 0.52, 0.30, 0.30, 0.00, 0.15]),
        (10, [0.45, 0.45, 0.26, 0.26, 0.00, 0.13]),
        (11, [0.41, 0.41, 0.00, 0.23, 0.00, 0.00]),
        (12, [0.37, 0.37, 0.00, 0.21, 0.00, 0.00]),
        (13, [0.00, 0.34, 0.00, 0.00, 0.00, 0.00]),
        (14, [0.00, 0.31, 0.00, 0.00, 0.00, 0.00]),
        (15, [0.00, 0.28, 0.00, 0.00, 0.00, 0.00]),
    ];

    /// <summary>The multiplier.</summary>
    /// <param name="perMinute">Lifts in a minute.</param>
    /// <param name="duration">How long the lifting goes on.</param>
    /// <param name="isLow">Whether the hands start below 75 cm (30 in).</param>
    public static double Multiplier(double perMinute, LiftingDuration duration, bool isLow)
    {
        var column = (2 * (int)duration) + (isLow ? 0 : 1);
        if (perMinute <= Table[0].PerMinute)
        {
            return Table[0].Multipliers[column];
        }

        for (var row = 1; row < Table.Length; row++)
        {
            if (perMinute <= Table[row].PerMinute)
            {
                var (below, above) = (Table[row - 1], Table[row]);
                var share = (perMinute - below.PerMinute) / (above.PerMinute - below.PerMinute);
                return below.Multipliers[column] + (share * (above.Multipliers[column] - below.Multipliers[column]));
            }
        }

        return 0;
    }
}
