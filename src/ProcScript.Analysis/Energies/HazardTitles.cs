using System.Buffers;
using System.Text.RegularExpressions;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Energies;

/// <summary>
/// The hazard that the title of an item names in English. Of a part only what it stores itself counts: a gas valve is no gas, a spring washer
/// no spring.
/// </summary>
internal static partial class HazardTitles
{
    private static readonly SearchValues<string> PartsOfWords = SearchValues.Create(
        ["bag", "tensioner", "squib", "restraint", "spring", "strut", "torsion", "gas", "accumulator", "pressure", "air"],
        StringComparison.OrdinalIgnoreCase);

    /// <summary>The hazard with the words that name it; null where none do.</summary>
    public static (Hazard Hazard, string Words)? Of(MachineItem item) => item switch
    {
        Energy => Found(Hazard.Restraint, RestraintWords(), item)
            ?? Found(Hazard.Spring, SpringWords(), item)
            ?? Found(Hazard.Pressure, PressureOfEnergy(), item)
            ?? Gas(item)
            ?? Found(Hazard.HighVoltage, HighVoltageWords(), item),
        Fluid => Found(Hazard.Refrigerant, RefrigerantWords(), item)
            ?? Found(Hazard.Pressure, PressureOfFluid(), item)
            ?? Gas(item),
        // Machines have thousands of parts, and hardly one with such a word.
        Part when item.Title.AsSpan().ContainsAny(PartsOfWords) => Found(Hazard.Restraint, RestraintWords(), item)
            ?? Found(Hazard.Spring, SpringWords(), item)
            ?? Found(Hazard.Pressure, PressureOfPart(), item),
        _ => null,
    };

    private static (Hazard Hazard, string Words)? Gas(MachineItem item) => EnergyWords.IsGas(item.Title) ? (Hazard.Pressure, "gas") : null;

    private static (Hazard Hazard, string Words)? Found(Hazard hazard, Regex words, MachineItem item) =>
        words.Match(item.Title) is { Success: true } match ? (hazard, match.Value) : null;

    [GeneratedRegex(
        @"\b(air[ -]?bags?|pretensioners?|squibs?|restraint\s+(modules?|systems?))\b(?!\s+(lamps?|lights?|labels?|stickers?|switch(es)?|covers?|screws?))",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex RestraintWords();

    [GeneratedRegex(@"\b(((gas|spring)\s+(struts?|springs?))|(main|torsion\s+|leaf\s+|coil\s+|return\s+)?springs?|torsion\s+bars?)\b(?!\s*[-\w])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SpringWords();

    [GeneratedRegex(@"\b(pressure|hydraulics?|pneumatics?|compressed[ -]air|steam)\b(?!\s+(switch(es)?|sensors?|gauges?)\b)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PressureOfEnergy();

    [GeneratedRegex(@"\b(compressed|pressuri[sz]ed|steam)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PressureOfFluid();

    [GeneratedRegex(
        @"\b(gas\s+(bottles?|cylinders?)|(hydraulic|pressure)\s+accumulators?|pressure\s+(vessels?|tanks?)|(compressed[ -])?air\s+(reservoirs?|tanks?|receivers?))\b(?!\s*[-\w])",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PressureOfPart();

    [GeneratedRegex(@"\b(refrigerant|R-?(12|22|32|134a|152a|290|404A|407C|410A|600a|744|1234yf|1234ze))\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex RefrigerantWords();

    [GeneratedRegex(@"\b(high[ -]voltage|HV|three[ -]phase)\b(?!\s+(interlock|pilot)\b)", RegexOptions.CultureInvariant)]
    private static partial Regex HighVoltageWords();
}
