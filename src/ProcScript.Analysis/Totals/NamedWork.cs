using System.Text.RegularExpressions;
using ProcScript.Analysis.Plans.Steps;

namespace ProcScript.Analysis.Totals;

/// <summary>
/// The work with a machine or with heat that the texts of a step name without a time, as in <c>Evacuate, then charge by weight.</c> What is usual
/// for hands alone would be far too short. English words are known.
/// </summary>
internal static partial class NamedWork
{
    /// <summary>The usual time of all that is named, in seconds; 0 where nothing is, or where the texts give times themselves.</summary>
    public static double Seconds(PlannedStep step)
    {
        var texts = SaidTime.Texts(step).Distinct().ToList();
        return texts.Sum(SaidTime.Seconds) > 0 ? 0 : texts
            .SelectMany(text => Order().Matches(text).Select(match => match.Groups["verb"].Value.ToUpperInvariant()))
            .Distinct(StringComparer.Ordinal)
            .Sum(Of);
    }

    private static double Of(string verb) => verb switch
    {
        "EVACUATE" => UsualTimes.Evacuating,
        "RECOVER" => UsualTimes.Recovering,
        "CHARGE" => UsualTimes.Charging,
        _ => UsualTimes.Heating,
    };

    /// <summary>A verb that opens a sentence or a clause: what is said of a heater, of a charge or of heat-conducting paste is none.</summary>
    [GeneratedRegex(@"(?:^|[.;:,!]\s*|\b(?:then|and)\s+)(?<verb>evacuate|recover|charge|heat|warm)\b(?!-)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Order();
}
