using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Prose;

/// <summary>English words that leave the reader to guess how much, how well, or what else.</summary>
internal static partial class VagueWords
{
    /// <summary>Every such word of a text.</summary>
    public static MatchCollection All(string text) => Pattern().Matches(text);

    [GeneratedRegex(
        @"\b(properly|adequately|adequate|sufficiently|appropriately|suitably|as\s+(required|necessary|needed|appropriate|applicable)|(if|when|where)\s+(necessary|required|needed|applicable|appropriate)"
        + @"|and\s+so\s+on|or\s+similar)\b|\betc\b\.?",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
