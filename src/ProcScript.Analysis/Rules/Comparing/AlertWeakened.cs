using ProcScript.Analysis.Comparing;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Comparing;

/// <summary>People are warned less than in an earlier state of the library.</summary>
public sealed class AlertWeakened : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5095", "alert-weakened", "An alert is gone or weaker than it was", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "`procscript diff` compares two states of a library: in the new one an alert is gone though its step is still there, or it has a "
            + "lesser signal word. A check of one state alone cannot see this.",
        Why: "An alert is rarely written for nothing, and rarely missed when it goes: the hazard is still there, and whoever reads the new card "
            + "has not read the old one. Whoever takes one back has to say so in the review.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                // There was a warning here, and it is gone: "The edge cuts. Keep your hands clear."
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
                warning "The edge cuts off a finger. Keep your hands clear."
                release guard_pins
                remove guard
              }
            }
            """);

    internal static Finding At(AlertChange alert, SourceSpan place, string job)
    {
        var where = alert.NewStep == 0 ? $"of {job}" : FormattableString.Invariant($"before step {alert.NewStep} of {job}");
        return new Finding(
            Id,
            alert.Kind == "weakened" ? $"the {alert.OldWord} {where} is only a {alert.NewWord} now" : $"the {alert.OldWord} {where} is gone",
            place,
            "is still done")
        {
            Help = $"write it again, or say in the review why people need it no longer: {alert.OldWord} \"{alert.OldText}\"",
        };
    }
}
