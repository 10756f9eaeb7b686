using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Suppressions;

/// <summary>A comment allows a finding until a day that is over.</summary>
public sealed class AllowanceExpired : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7004", "allowance-expired", "A finding is allowed until a day that is over", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The day after `until` in a `// proc: allow` comment is over. The comment silences nothing any more.",
        Why: "The exception was meant for a time. Whoever set the day wanted it looked at again.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                // proc: allow PRC3006 until 2020-01-31 because "The new pins come in January."
                // proc: allow PRC3006 until 2999-12-31 because "The pins snap back when the guard moves."
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

    internal static Finding At(SourceSpan date, string rule, DateOnly day) =>
        new(Id, string.Create(CultureInfo.InvariantCulture, $"{rule} was allowed until {day:yyyy-MM-dd}"), date)
        {
            Help = "fix what is found on the next line, or set a new day",
        };
}
