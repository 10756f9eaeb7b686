using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Settings;

/// <summary>The words for severities in a settings file.</summary>
public static class SeverityChoice
{
    /// <summary>The word for findings that are not told at all.</summary>
    public const string Off = "off";

    /// <summary>The words, the worst first.</summary>
    public static ImmutableArray<string> Words { get; } = ["error", "warning", "hint", Off];

    private static readonly FrozenDictionary<string, Severity?> Meanings = new Dictionary<string, Severity?>
    {
        ["error"] = Severity.Error,
        ["warning"] = Severity.Warning,
        ["hint"] = Severity.Hint,
        [Off] = null,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The word for a severity; null means off.</summary>
    public static string WordFor(Severity? severity) => Meanings.First(meaning => meaning.Value == severity).Key;

    /// <summary>Whether a word stands for a severity, and for which; null means off.</summary>
    public static bool TryRead(string word, out Severity? severity) => Meanings.TryGetValue(word, out severity);

    /// <summary>Whether a rule may be given a severity: what is an error by itself stays one.</summary>
    public static bool MayBe(RuleInfo rule, Severity? severity)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return rule.DefaultSeverity != Severity.Error || severity == Severity.Error;
    }
}
