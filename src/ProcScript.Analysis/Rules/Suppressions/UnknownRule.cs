using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Suppressions;

/// <summary>A comment allows a rule that does not exist.</summary>
public sealed class UnknownRule : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7003", "unknown-rule", "A comment allows a rule that does not exist", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `// proc: allow` comment names neither the code nor the name of a rule.",
        Why: "The comment silences nothing, although somebody meant it to.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                // proc: allow PRC9006 because "The pins snap back when the guard moves."
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """);

    internal static Finding At(SourceSpan place, string rule) =>
        new(Id, rule.Length == 0 ? "the comment names no rule to allow" : $"there is no rule `{rule}`", place)
        {
            Help = "name a rule by its code, such as `PRC3006`, or by its name, such as `done-twice`",
        };
}
