using System.Text.RegularExpressions;
using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Machines;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Fluids;

/// <summary>What an opened line has to be looked at for when it is closed again.</summary>
internal enum LineContents
{
    /// <summary>Nothing that English words tell.</summary>
    Unknown,

    /// <summary>Fuel, gas, coolant, refrigerant: what leaks burns, poisons, or is missed.</summary>
    Leaking,

    /// <summary>Brakes, clutches, hydraulics: air in the line gives way too.</summary>
    BledOfAir,
}

/// <summary>English words of what lines carry, and of what shows that they hold.</summary>
internal static partial class LineWords
{
    /// <summary>
    /// What a line carries, by the titles of its fluid and its energy; where it has neither, by those of its kind and the parts at its ends.
    /// </summary>
    public static LineContents Of(Joint line)
    {
        if (line.Carries?.Has(Hazard.Refrigerant) == true)
        {
            return LineContents.Leaking;
        }

        var words = line.Carries is null && line.On is null
            ? $"{line.Kind.Title}, {line.Owner.Title}, {line.Other?.Title}"
            : $"{line.Carries?.Title}, {line.On?.Title}, {(line.Carries is null ? line.Kind.Title : "")}";
        if (AirMatters().IsMatch(words))
        {
            return LineContents.BledOfAir;
        }

        return LeakMatters().IsMatch(words) || EnergyWords.IsGas(words) ? LineContents.Leaking : LineContents.Unknown;
    }

    /// <summary>Whether a text speaks of a leak, of pressure or vacuum, of air let out or of a level.</summary>
    public static bool SpeaksOfTightness(string text) => Tightness().IsMatch(text) || SpeaksOfAir(text);

    /// <summary>Whether a text speaks of air let out.</summary>
    public static bool SpeaksOfAir(string text) => Air().IsMatch(text);

    /// <summary>Whether a text is about looking for a leak with what belongs in the line.</summary>
    public static bool SpeaksOfLeak(string text) => Leak().IsMatch(text) && !IsOfOtherMedium(text);

    /// <summary>Whether a text is about a test with air, nitrogen or a vacuum instead.</summary>
    public static bool IsOfOtherMedium(string text) => OtherMedium().IsMatch(text);

    [GeneratedRegex(@"\b(brakes?|clutch(es)?|hydraulics?)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AirMatters();

    [GeneratedRegex(@"\b(fuel|petrol|gasoline|diesel|kerosene|coolant|antifreeze|glycol|refrigerant|steam)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex LeakMatters();

    [GeneratedRegex(
        @"\b(leak\w*|drip\w*|weep\w*|seep\w*|sweat\w*|escap\w+|comes?\s+out|runs?\s+out|tightness|(gas|water|oil|air|pressure)[ -]?tight|pressure|bar|psi|vacuum|evacuat\w+|hold(s|ing)?\s+(its|the)?\s*(pressure|vacuum|charge)"
        + @"|levels?|soap\w*|foam\w*|spray|sniff\w*|detector|(is|are|stays?|remains?)\s+dry|wet|damp)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Tightness();

    [GeneratedRegex(@"\b(bleed\w*|bled|vent(s|ed|ing)?|purg\w+|bubbles?|foam\w*|no\s+(more\s+)?air|free\s+of\s+air|air\s+(lock|comes|is\s+out)|air-?free|spongy|firm)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Air();

    [GeneratedRegex(@"\b(leak\w*|drips?|weep\w*|seep\w*|soap\w*|sniff\w*)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Leak();

    [GeneratedRegex(@"\b(vacuum|evacuat\w*|nitrogen|test\s+(gas|air|pump)|dry\s+air|compressed\s+air|air\s+pressure|helium|with\s+air|by\s+air)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OtherMedium();
}
