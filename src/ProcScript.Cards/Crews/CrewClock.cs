using System.Globalization;

namespace ProcScript.Cards.Crews;

/// <summary>Times since the job began.</summary>
internal static class CrewClock
{
    private const double Minute = 60;

    /// <summary>Hours and minutes, such as <c>1:05</c>: to the minute, as an estimate can be no finer.</summary>
    public static string Of(double seconds)
    {
        var minutes = (int)(seconds / Minute);
        return string.Create(CultureInfo.InvariantCulture, $"{minutes / 60}:{minutes % 60:00}");
    }
}
