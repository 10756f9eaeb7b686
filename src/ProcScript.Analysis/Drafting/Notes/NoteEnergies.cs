using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>Words by which notes speak of what can hurt.</summary>
internal static partial class NoteEnergies
{
    /// <summary>Whether words are about a supply and no part: what is disconnected then is isolated.</summary>
    public static bool IsSupply(string words) => Supply().IsMatch(words);

    /// <summary>The energy that words stand for: <c>the machine at the wall</c> is the mains.</summary>
    public static string Of(string words) => words.Length == 0 || words.StartsWith("at ", StringComparison.OrdinalIgnoreCase) || Machine().IsMatch(words) ? "mains"
        : Battery().IsMatch(words) ? "battery"
        : words;

    /// <summary>Whether a check right after an energy is isolated proves it off.</summary>
    public static bool IsProof(string sentence) => Proof().IsMatch(sentence);

    [GeneratedRegex(@"\b(mains|battery|power|pwr|supply|air supply|pressure|electrics|electricity|current)\b(?!\s+(?:plug|lead|cable|cover|bracket|tray|clamp))", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Supply();

    [GeneratedRegex(@"^(?:machine|unit|it|everything|wall|power|pwr|mains.*|main switch|electrics|electricity|.*\bmains)$|\b(?:wall|socket outlet)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Machine();

    // "battery -ve", "battery negative", "battery earth"
    [GeneratedRegex(@"^battery\s+(?:[-+]\s?ve|negative|positive|earth|ground|terminals?)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Battery();

    [GeneratedRegex(@"\b(dead|voltage|volts|no power|is off|stays dark|will not start|does not start|zero|start button|discharged|no pressure|gauge)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Proof();
}
