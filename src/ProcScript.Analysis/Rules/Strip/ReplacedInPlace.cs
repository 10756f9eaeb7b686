using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>Something is replaced while it is still in the machine.</summary>
public sealed class ReplacedInPlace : StripRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3012", "replaced-in-place", "Something is replaced while it is still in the machine", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `replace` names a part that has not been removed, or a joint that has not been taken off whole; or a `replace n of` more pieces than "
            + "are off.",
        Why: "The new part cannot go in while the old one is there: a step is missing, or `replace` names the wrong thing.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure new_guard "Replace the guard" on press {
              stage "Guard" {
                release guard_pins
              }
              work {
                replace guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure new_guard "Replace the guard" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
              work {
                replace guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(StripRun run) =>
    [
        .. Whole(run),
        .. from failure in run.Failures.OfType<TooFewOff>()
           where failure.Asked <= failure.Joint.Count && failure.Renewed == 0
           select StepFinding.At(
               Id,
               failure.Step,
               $"{failure.Asked} of {ItemPhrases.The(failure.Joint)} are replaced and {failure.Off} of {failure.Joint.Count} are off",
               "not so many have come off",
               [new LabeledSpan(failure.Joint.Declared, "declared here")]) with
           {
               Help = $"{ItemPhrases.Cue(ActionTable.OpeningOf(failure.Joint))} first",
           },
    ];

    private static IEnumerable<Finding> Whole(StripRun run) =>
        from failure in run.Failures.OfType<NotOff>()
        where failure.Step.Verb == Verb.Replace
        select StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.The(failure.Target)} is replaced while it is still in the machine",
            "it has not come off",
            [new LabeledSpan(failure.Target.Declared, "declared here")]) with
        {
            Help = $"{ItemPhrases.Cue(ActionTable.OpeningOf(failure.Target))} first",
        };
}
