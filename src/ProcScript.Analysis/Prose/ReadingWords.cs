using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Prose;

/// <summary>What a text says of a reading: a unit, and a figure with it.</summary>
internal static partial class ReadingWords
{
    private const string Units =
        @"(mV|kV|V|mA|A|ohm|kohm|Mohm|Ω|kΩ|MΩ|N[·.]?m|N[·.]cm|kN|N|lbf[·.](ft|in)|mbar|bar|kPa|MPa|Pa|psi|inHg|µm|um|mm|cm|m|in|ft|°|°C|°F|K|kg|g|lb|oz|mL|L|gal|qt|L/min|mL/min|L/h|gal/min|rpm|rev/min|Hz|kHz|%|s|min|h|turns?)";

    /// <summary>Whether a figure with a unit stands in a text.</summary>
    public static bool HasFigure(string text) => Figure().IsMatch(text);

    /// <summary>The unit that a text names without any figure; null where it names none.</summary>
    public static Match? BareUnit(string text) => !HasFigure(text) && Unit().Match(text) is { Success: true } unit ? unit : null;

    /// <summary>Whether an English text begins by having something measured.</summary>
    public static bool BeginsToMeasure(string text) => Measuring().IsMatch(text);

    /// <summary>Whether an English text begins by having something read off.</summary>
    public static bool BeginsToRead(string text) => Reading().IsMatch(text);

    [GeneratedRegex(@"^\s*read\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Reading();

    [GeneratedRegex(@"\d\s?-?" + Units + @"(?![\w])", RegexOptions.CultureInvariant)]
    private static partial Regex Figure();

    [GeneratedRegex(
        @"\b(mV|kV|mA|kohm|Mohm|mbar|psi|kPa|MPa|inHg|N·m|N\.m|lbf·ft|lbf\.ft|L/min|rpm)(?!\w)|°[CF]\b|(?<=\b(in|as)\s)(V|A|bar|mm|ohm|%)(?!\w)",
        RegexOptions.CultureInvariant)]
    private static partial Regex Unit();

    [GeneratedRegex(@"^\s*(measure|read)\b(?!\s+the\s+(label|plate|text|sign))", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Measuring();
}
