using System.Globalization;

namespace ProcScript.Cards.Words;

/// <summary>
/// Times in words. An estimate is told as a person tells it: in half minutes up to 2 min, in minutes up to 20, in 5 min up to 1 h, in quarters of an
/// hour up to 4 h, in half hours up to 10 h, then in hours, each to the nearest. A figure of the author's is told as it is.
/// </summary>
internal static class Durations
{
    private const double Minute = 60;
    private const double Hour = 3600;

    /// <summary>So far each step of rounding goes, in seconds, the finest first.</summary>
    private static readonly (double UpTo, double Step)[] Steps =
    [
        (2 * Minute, Minute / 2), (20 * Minute, Minute), (Hour, 5 * Minute), (4 * Hour, Hour / 4), (10 * Hour, Hour / 2), (double.PositiveInfinity, Hour),
    ];

    /// <summary>An estimate, rounded; whatever takes any time at all takes 30 s.</summary>
    public static string InWords(double seconds) => seconds <= 0 ? Told(0) : Told(Math.Max(Minute / 2, Rounded(seconds)));

    /// <summary>
    /// The parts of an estimate, so that what is printed of them adds up to what is printed of the whole: each is rounded to a finer step than the
    /// whole, and what is left over goes where the rounding took most. A part that takes any time at all is not told as none.
    /// </summary>
    public static IReadOnlyList<string> PartsInWords(double whole, IReadOnlyList<double> parts)
    {
        var sum = parts.Sum();
        var told = whole <= 0 ? 0 : Math.Max(Minute / 2, Rounded(whole));
        var step = told <= 5 * Minute ? Minute / 2 : told <= Hour ? Minute : told <= 10 * Hour ? 5 * Minute : Hour / 4;
        var shares = parts.Select(part => sum <= 0 ? 0 : part / sum * told / step).ToList();
        var units = shares.Select(share => share > 0 ? Math.Max(1, (int)share) : 0).ToList();
        var all = (int)Math.Round(told / step);
        while (units.Sum() is var used && used != all && units.Exists(unit => unit > 0))
        {
            // Where there are more parts than steps, the smallest have to be told as none after all.
            var at = Enumerable.Range(0, units.Count).Where(i => units[i] > 0).MaxBy(i => used < all
                ? shares[i] - units[i]
                : units[i] > 1 ? units[i] - shares[i] : -1 - shares[i]);
            units[at] += used < all ? 1 : -1;
        }

        return [.. units.Select(unit => Told(unit * step))];
    }

    /// <summary>A figure that somebody has given: to the second up to 2 min, else to the minute upwards.</summary>
    public static string Exact(double seconds) => seconds < 2 * Minute
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(seconds):0} s")
        : Told(Math.Ceiling(seconds / Minute) * Minute);

    /// <summary>The estimate in seconds, as it is told.</summary>
    internal static double Rounded(double seconds)
    {
        var step = Steps.First(row => seconds <= row.UpTo).Step;
        return Math.Floor((seconds / step) + 0.5) * step;
    }

    private static string Told(double seconds)
    {
        var halves = (int)Math.Round(seconds / (Minute / 2));
        var minutes = halves / 2;
        return (minutes / 60, minutes % 60, halves % 2) switch
        {
            (0, 0, 1) => "30 s",
            (0, var rest, 1) => string.Create(CultureInfo.InvariantCulture, $"{rest}½ min"),
            (0, var rest, _) => string.Create(CultureInfo.InvariantCulture, $"{rest} min"),
            (var hours, 0, _) => string.Create(CultureInfo.InvariantCulture, $"{hours} h"),
            var (hours, rest, _) => string.Create(CultureInfo.InvariantCulture, $"{hours} h {rest} min"),
        };
    }
}
