using System.Globalization;

namespace ProcScript.Cards.Words;

/// <summary>Times in words.</summary>
internal static class Durations
{
    /// <summary>Seconds below two minutes, else minutes rounded up, else hours and minutes: an estimate is no stop-watch.</summary>
    public static string InWords(double seconds)
    {
        if (seconds < 120)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(seconds):0} s");
        }

        var minutes = Math.Ceiling(seconds / 60);
        var hours = Math.Floor(minutes / 60);
        return (hours, minutes - (hours * 60)) switch
        {
            (0, var rest) => string.Create(CultureInfo.InvariantCulture, $"{rest:0} min"),
            (_, 0) => string.Create(CultureInfo.InvariantCulture, $"{hours:0} h"),
            (_, var rest) => string.Create(CultureInfo.InvariantCulture, $"{hours:0} h {rest:0} min"),
        };
    }
}
