using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>Hand work is said to go on in the background.</summary>
public sealed class NotForTheBackground : StripFailureRule<NotInBackground>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3019", "not-for-the-background", "Hand work is said to go on in the background", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "`in background` is for what goes on by itself: emptying, cleaning, a repair that cures, a task, a check, a "
            + "measurement.",
        Why: "Undoing or removing something takes a pair of hands. A plan that lets it go on by itself is never kept.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard in background
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
                remove guard
              }
              work {
                clean guard in background
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(NotInBackground failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"`{ActionTable.Row(failure.Step.Verb).Word}` cannot go on in the background",
        "it takes a pair of hands") with
    {
        Help = "leave `in background` out",
    };
}
