using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A settings file has a key twice at one place.</summary>
public sealed class SettingGivenTwice : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7019", "setting-given-twice", "A setting that is given twice", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A settings file has the same key twice at one place. The last one holds.",
        Why: "Whoever reads the first one believes it.",
        Wrong: """
            // file: procscript.json
            {
              "wording": "english",
              "wording": "neutral"
            }
            """,
        Right: """
            // file: procscript.json
            {
              "wording": "neutral"
            }
            """);

    internal static Finding At(string key, SourceSpan first, SourceSpan second) =>
        new(Id, $"`{key}` is given twice", first, "has no effect")
        {
            Related = [new LabeledSpan(second, "this one holds")],
            Help = "take one of them out",
        };
}
