using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>More pieces are to come off than are there.</summary>
public sealed class TooMany : StripFailureRule<TooFewLeft>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3008", "too-many", "More pieces are to come off than are there", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step takes off more pieces of a joint than are still attached.",
        Why: "The count is what the technician checks the bag against. A wrong count means a bolt is looked for that never "
            + "was, or one is forgotten in the refit.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release 6 of guard_pins
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
                release 4 of guard_pins
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(TooFewLeft failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"{failure.Asked} of {ItemPhrases.The(failure.Joint)} are to be {ActionTable.Row(failure.Step.Verb).Done} and "
            + $"{failure.Attached} {(failure.Attached == 1 ? "is" : "are")} there",
        $"{failure.Attached} × {failure.Joint.Kind.Title} left",
        [new LabeledSpan(failure.Joint.Declared, $"{failure.Joint.Count} declared here")]) with
    {
        Help = $"leave the number out to take all that are left, or write {failure.Attached}",
    };
}
