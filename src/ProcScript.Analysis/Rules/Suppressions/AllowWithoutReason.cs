using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Suppressions;

/// <summary>A comment allows a finding and does not say why.</summary>
public sealed class AllowWithoutReason : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7001", "allow-without-reason", "A finding is allowed without a reason", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `// proc: allow` comment silences a finding and does not say why.",
        Why: "Whoever reads the procedure next year cannot tell a considered exception from a nuisance switched off.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                // proc: allow PRC3006
                release guard_pins
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                // proc: allow PRC3006 because "The pins snap back when the guard moves."
                release guard_pins
                remove guard
              }
            }
            """);

    internal static Finding At(SourceSpan comment, string rule) =>
        new(Id, $"{rule} is allowed without a reason", comment)
        {
            Help = $"write `// proc: allow {rule} because \"…\"`",
        };
}
