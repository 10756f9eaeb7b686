using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A refit verb stands in a stage or in the work.</summary>
public sealed class RefitVerbInStrip : StripFailureRule<VerbOfTheRefit>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3017", "refit-verb-in-strip", "A refit verb stands in a stage or in the work", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Stages take the machine apart. Fastening, fitting, filling and restoring belong to the refit, which is derived.",
        Why: "A refit that is written by hand beside the derived one is done twice, or contradicts it.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
                fit guard
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
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(VerbOfTheRefit failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"{ItemPhrases.Written(new NamedAction(failure.Step.Verb, failure.Target))} belongs to the refit",
        "the refit is derived from the strip") with
    {
        Help = "take the step out; where the order of the refit matters, write a rule in `refit { … }`",
        Fixes = [.. StepEdits.Delete(run, failure.Step)],
    };
}
