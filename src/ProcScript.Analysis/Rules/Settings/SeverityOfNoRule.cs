using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A severity is given to a rule that does not exist.</summary>
public sealed class SeverityOfNoRule : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7017", "severity-of-no-rule", "A severity for a rule that does not exist", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A key of `severities` is neither the code nor the name of a rule, nor a family such as `PRC5xxx`.",
        Why: "The rule that was meant keeps its severity.",
        Wrong: """
            // file: procscript.json
            { "severities": { "long-sentense": "off" } }
            """,
        Right: """
            // file: procscript.json
            { "severities": { "long-sentence": "off" } }
            """);

    internal static Finding At(string key, IReadOnlyCollection<string> near, SourceSpan place) =>
        new(Id, $"there is no rule `{key}`", place)
        {
            Help = near.Count > 0
                ? DidYouMean.Help(near)
                : "name a rule by its code, such as `PRC5092`, by its name, such as `long-sentence`, or a family, such as `PRC5xxx`",
        };
}
