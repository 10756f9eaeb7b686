using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Settings;

/// <summary>What a key of <c>severities</c> names: one rule, or a family of them.</summary>
/// <param name="Rules">The rules.</param>
/// <param name="IsFamily">Whether it names them by their family.</param>
internal sealed record SeverityKey(ImmutableArray<RuleInfo> Rules, bool IsFamily)
{
    private const string CodePrefix = "PRC";
    private const string AnyNumber = "xxx";

    /// <summary>What a key names; null where nothing.</summary>
    public static SeverityKey? Of(string key)
    {
        if (RuleCatalog.Find(key) is { } rule)
        {
            return new SeverityKey([rule.Info], IsFamily: false);
        }

        var digits = key.StartsWith(CodePrefix, StringComparison.OrdinalIgnoreCase) ? key[CodePrefix.Length..] : key;
        return digits is [>= '1' and <= '8', ..] && digits[1..].Equals(AnyNumber, StringComparison.OrdinalIgnoreCase)
            ? new SeverityKey([.. RuleCatalog.All.Select(one => one.Info).Where(info => info.Code[CodePrefix.Length] == digits[0])], IsFamily: true)
            : null;
    }
}
