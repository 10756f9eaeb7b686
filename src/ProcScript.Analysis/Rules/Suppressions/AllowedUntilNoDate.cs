using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Suppressions;

/// <summary>A comment allows a finding until something that is no day.</summary>
public sealed class AllowedUntilNoDate : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7005", "allowed-until-no-date", "A finding is allowed until something that is no day", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "No day of the calendar, written as year, month and day, follows `until` in a `// proc: allow` comment.",
        Why: "The exception was meant for a time, and now it holds for ever.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                // proc: allow PRC3006 until summer because "The pins snap back when the guard moves."
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
                // proc: allow PRC3006 until 2999-12-31 because "The pins snap back when the guard moves."
                release guard_pins
                remove guard
              }
            }
            """);

    internal static Finding At(SourceSpan place, string written) =>
        new(Id, written == "until" ? "no day follows `until`" : $"`{written}` is no day", place)
        {
            Help = "write the last day on which it is allowed as year, month and day, such as `until 2027-03-01`",
        };
}
