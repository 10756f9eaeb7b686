using System.Globalization;
using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>
/// Finds, by the hazard marks and the words of a plan, work that most countries leave to licensed people. It can only add cautions: every pack
/// carries the general one, whatever is found here.
/// </summary>
public static partial class LicensedWork
{
    // Work on live parts above 60 V DC counts as high voltage: e-safe-consulting.com on DGUV Information 209-093 and DIN VDE 0105-100.
    private const double HighVoltage = 60;

    /// <summary>The sorts found, of <c>refrigerant</c>, <c>restraint</c> and <c>high voltage</c>.</summary>
    public static IEnumerable<string> In(Plan plan)
    {
        var texts = Texts(plan).ToHashSet(StringComparer.Ordinal);
        var marks = plan.Hazards.Select(hazard => hazard.Word).ToHashSet(StringComparer.Ordinal);
        if (marks.Contains("refrigerant") || texts.Any(Refrigerant().IsMatch))
        {
            yield return "refrigerant";
        }

        if (marks.Contains("restraint") || texts.Any(Restraint().IsMatch))
        {
            yield return "restraint";
        }

        if (marks.Contains("high_voltage") || texts.Any(IsHighVoltage))
        {
            yield return "high voltage";
        }
    }

    private static IEnumerable<string> Texts(Plan plan) =>
    [
        .. plan.Energies.Select(energy => energy.Title),
        .. plan.Fluids.Select(fluid => fluid.Title),
        .. plan.Strip.Append(plan.Work).Concat(plan.Refit).SelectMany(stage => stage.Steps).Select(step => step.ItemTitle),
    ];

    /// <summary>Whether a text speaks of high voltage. A traction battery does, unless the text itself gives it less.</summary>
    private static bool IsHighVoltage(string text)
    {
        var volts = Volts().Matches(text).Select(match => double.Parse(match.Groups[1].ValueSpan, CultureInfo.InvariantCulture)).ToList();
        return HighVoltageWords().IsMatch(text) || (volts.Count > 0 ? volts.Max() > HighVoltage : TractionBattery().IsMatch(text));
    }

    [GeneratedRegex(@"\brefrigerant|\bR-?(134a|1234yf|744|12)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Refrigerant();

    [GeneratedRegex(@"\brestraint|\bair-?\s?bag|\bpre-?tensioner|\bsquib", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Restraint();

    [GeneratedRegex(@"\bhigh[- ]voltage|\bHV\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex HighVoltageWords();

    [GeneratedRegex(@"\btraction battery", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex TractionBattery();

    [GeneratedRegex(@"\b(\d{1,6}(?:\.\d{1,3})?)\s*V\b", RegexOptions.CultureInvariant)]
    private static partial Regex Volts();
}
