using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Settings;

/// <summary>The words for severities in a settings file.</summary>
public static class SeverityChoice
{
    /// <summary>The word for findings that are not told at all.</summary>
    public const string Off = "off";

    /// <summary>The words, the worst first.</summary>
    public static ImmutableArray<string> Words { get; } = [.. SeverityWords.All, Off];

    /// <summary>The word for a severity; null means off.</summary>
    public static string WordFor(Severity? severity) => severity is { } known ? SeverityWords.Of(known) : Off;

    /// <summary>Whether a word stands for a severity, and for which; null means off.</summary>
    public static bool TryRead(string word, out Severity? severity)
    {
        severity = SeverityWords.Read(word);
        return severity is not null || word == Off;
    }

    /// <summary>Whether a rule may be given a severity: what is an error by itself stays one.</summary>
    public static bool MayBe(RuleInfo rule, Severity? severity)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return rule.DefaultSeverity != Severity.Error || severity == Severity.Error;
    }
}
