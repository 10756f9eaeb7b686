using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>Something is discarded while it is still in the machine.</summary>
public sealed class DiscardedInPlace : StripRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3015", "discarded-in-place", "Something is discarded while it is still in the machine", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `discard` names a part that has not been removed, or a joint that has not been taken off whole.",
        Why: "What is still in the machine stays there; the discard would only hide that from the refit.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure no_guard "Take the guard away" on press {
              stage "Guard" {
                release guard_pins
                discard guard because "The new press has a light curtain."
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure no_guard "Take the guard away" on press {
              stage "Guard" {
                release guard_pins
                remove guard
                discard guard because "The new press has a light curtain."
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(StripRun run) =>
        from failure in run.Failures.OfType<NotOff>()
        where failure.Step.Verb == Verb.Discard
        select StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.The(failure.Target)} is discarded while it is still in the machine",
            "it has not come off",
            [new LabeledSpan(failure.Target.Declared, "declared here")]) with
        {
            Help = $"{ItemPhrases.Cue(ActionTable.OpeningOf(failure.Target))} first",
        };
}
