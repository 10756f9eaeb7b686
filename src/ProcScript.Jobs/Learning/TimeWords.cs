using System.Globalization;

namespace ProcScript.Jobs.Learning;

/// <summary>Times as a technician writes and says them.</summary>
internal static class TimeWords
{
    private const double Minute = 60;
    private const double Hour = 3600;

    /// <summary>Up to so many seconds, times are rounded to so many.</summary>
    private static readonly (double UpTo, double To)[] Steps = [(10, 1), (60, 5), (2 * Minute, 10), (10 * Minute, 30), (30 * Minute, Minute), (2 * Hour, 5 * Minute), (double.MaxValue, Hour / 2)];

    /// <summary>The time as it would be written down, in seconds: no finer than anybody can keep to, and never nothing.</summary>
    /// <param name="seconds">The time.</param>
    public static double Rounded(double seconds)
    {
        var to = Steps.First(step => seconds <= step.UpTo).To;
        return Math.Max(1, Math.Round(seconds / to, MidpointRounding.AwayFromZero) * to);
    }

    /// <summary>A rounded time as sources have it: <c>90 s</c>, <c>2.5 min</c>, <c>1.5 h</c>.</summary>
    /// <param name="seconds">The time.</param>
    public static string Written(double seconds) =>
        seconds >= 2 * Hour ? $"{Number(seconds / Hour)} h"
        : seconds >= 2 * Minute || seconds == Minute ? $"{Number(seconds / Minute)} min"
        : $"{Number(seconds)} s";

    /// <summary>A measured time in words: <c>6.4 s</c>, <c>2 min 10 s</c>, <c>1 h 20 min</c>.</summary>
    /// <param name="seconds">The time.</param>
    public static string Said(double seconds)
    {
        if (seconds < 20)
        {
            return $"{Number(Math.Round(seconds, 1))} s";
        }

        var (whole, unit, part, partUnit) = seconds < Hour ? (Minute, "min", 1.0, "s") : (Hour, "h", Minute, "min");
        var parts = Math.Round(seconds / part, MidpointRounding.AwayFromZero);
        var (wholes, rest) = (Math.Floor(parts * part / whole), (parts * part % whole) / part);
        return string.Join(' ', new[] { wholes > 0 ? $"{Number(wholes)} {unit}" : "", rest > 0 ? $"{Number(rest)} {partUnit}" : "" }.Where(text => text.Length > 0));
    }

    private static string Number(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
