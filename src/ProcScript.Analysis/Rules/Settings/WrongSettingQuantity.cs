using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A limit is no quantity of its sort, or lies where it may not.</summary>
public sealed class WrongSettingQuantity : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7016", "wrong-setting-quantity", "A limit that is no such quantity or too far off", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A limit has no unit, an unknown one or one that measures something else, or lies outside of what may be "
            + "chosen. The limits of safety may be set tighter, never wider.",
        Why: "A limit in the wrong unit is worse than none: it looks as if somebody had thought about it.",
        Wrong: """
            // file: procscript.json
            { "limits": { "onePersonMass": "20 mm" } }
            """,
        Right: """
            // file: procscript.json
            { "limits": { "onePersonMass": "44 lb" } }
            """);

    internal static Finding At(string problem, string help, SourceSpan place) => new(Id, problem, place) { Help = help };
}
