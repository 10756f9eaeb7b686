using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Procedures;

/// <summary>A procedure that is written both with and without one option.</summary>
public sealed class WithAndWithout : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC1120", "with-and-without", "A job for machines both with and without an option", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The line of a procedure says both `with` and `without` of one option.",
        Why: "No machine is both, so nobody would ever do the job.",
        Wrong: """
            clip pin "push pin"
            machine heater "heater" {
              option gas "gas burner"
              part lid "lid" { held by 2 pin as lid_pins }
            }
            procedure lid_off "Take the lid off" on heater with gas without gas {
              stage "Lid" { release lid_pins  remove lid }
            }
            """,
        Right: """
            clip pin "push pin"
            machine heater "heater" {
              option gas "gas burner"
              part lid "lid" { held by 2 pin as lid_pins }
            }
            procedure lid_off "Take the lid off" on heater with gas {
              stage "Lid" { release lid_pins  remove lid }
            }
            """);

    internal static Finding At(string option, string procedure, SourceSpan place, SourceSpan first) =>
        new(Id, $"`{procedure}` is for machines both with and without `{option}`", place, "says the opposite")
        {
            Related = [new LabeledSpan(first, "said here")],
            Help = "keep one of the two; for both sorts of machine, leave the option out and use `when`",
        };
}
