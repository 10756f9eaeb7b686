using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Quantities;

namespace ProcScript.Model.Binding.Quantities;

/// <summary>What an unknown unit was probably meant to be.</summary>
internal static class UnitGuess
{
    /// <summary>Spellings seen in workshops, without points, blanks and case, with the spelling of this language.</summary>
    private static readonly FrozenDictionary<string, string> Habits = new (string Unit, string Spellings)[]
    {
        ("N.m", "nm newtonmetre newtonmeter mn"),
        ("N.cm", "ncm"),
        ("lbf.ft", "ftlb ftlbs lbft lbsft ftlbf lbfft"),
        ("lbf.in", "inlb inlbs lbin lbsin inlbf lbfin"),
        ("ozf.in", "inoz ozin inozf ozfin"),
        ("kgf.m", "kgm mkg kgfm mkgf"),
        ("kgf.cm", "kgcm kgfcm"),
        ("µm", "um μm micron microns"),
        ("m", "metre meter metres meters"),
        ("mm", "millimetre millimeter millimetres millimeters"),
        ("cm", "centimetre centimeter"),
        ("in", "inch inches"),
        ("ft", "foot feet"),
        ("kg", "kgs kilo kilos kilogram kilograms"),
        ("g", "gr gm gram grams"),
        ("lb", "lbs pound pounds"),
        ("L", "l ltr litre litres liter liters"),
        ("mL", "cc ccm"),
        ("gal", "gallon gallons usgal"),
        ("qt", "quart quarts"),
        ("fl.oz", "ozfl"),
        ("psi", "psig lbfin2 lbin2"),
        ("bar", "bars"),
        ("°C", "c °c degc"),
        ("°F", "f °f degf"),
        ("°", "deg degree degrees"),
        ("s", "sec secs second seconds"),
        ("min", "mins minute minutes"),
        ("h", "hr hrs hour hours"),
        ("V", "volt volts"),
        ("A", "amp amps"),
        ("ohm", "ohms ω"),
        ("%", "percent pct"),
        ("L/min", "lpm"),
        ("L/h", "lph"),
        ("gal/min", "gpm"),
    }
    .SelectMany(row => row.Spellings.Split(' ').Select(spelling => KeyValuePair.Create(spelling, row.Unit)))
    .ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly NearNames Spellings = new(Units.All.Select(Units.SpellingOf).Concat(Habits.Keys));

    /// <summary>The spellings meant, the likeliest first; one where there is no doubt.</summary>
    public static ImmutableArray<string> For(string written, QuantityDemand demand, FindingSink sink)
    {
        var plain = string.Concat(written.ToLowerInvariant().Where(letter => letter is not ('.' or '/' or '·' or ' ')));
        if (Habits.TryGetValue(plain, out var habit) && Fits(habit))
        {
            return [habit];
        }

        var sameLetters = Units.All
            .Select(Units.SpellingOf)
            .Where(spelling => string.Equals(spelling, written, StringComparison.OrdinalIgnoreCase) && Fits(spelling))
            .ToImmutableArray();
        return sameLetters.IsEmpty
            ? [.. Spellings.Find(written, sink, near => Fits(Meant(near))).Select(Meant).Distinct(StringComparer.Ordinal)]
            : sameLetters;

        string Meant(string spelling) => Habits.GetValueOrDefault(spelling, spelling);

        bool Fits(string spelling) => demand.Dimensions.IsEmpty || demand.Dimensions.Contains(Units.Find(spelling)!.Dimension);
    }
}
