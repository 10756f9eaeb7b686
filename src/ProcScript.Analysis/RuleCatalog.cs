using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis.Rules;
using ProcScript.Model.Rules;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Rules;

namespace ProcScript.Analysis;

/// <summary>Every rule there is, whichever room raises it.</summary>
public static class RuleCatalog
{
    /// <summary>The rules in the order of their codes.</summary>
    public static ImmutableArray<Rule> All { get; } =
        [.. SyntaxRules.All.Concat(ModelRules.All).Concat(AnalysisRules.All).OrderBy(rule => rule.Info.Code, StringComparer.Ordinal)];

    private static readonly FrozenDictionary<string, Rule> ByKey = All
        .SelectMany(rule => new[] { KeyValuePair.Create(rule.Info.Code, rule), KeyValuePair.Create(rule.Info.Name, rule) })
        .ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>The rule with this code or name, in any case of letters, or null.</summary>
    public static Rule? Find(string codeOrName) => ByKey.GetValueOrDefault(codeOrName);
}
