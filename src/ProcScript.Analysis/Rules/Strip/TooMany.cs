using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>More pieces are to come off, or to be replaced, than are there.</summary>
public sealed class TooMany : StripRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3008", "too-many", "More pieces are to come off, or to be replaced, than are there", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step takes off more pieces of a joint than are still attached, or a `replace n of` names more than the joint has, or more than "
            + "earlier ones have left.",
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
    public override IEnumerable<Finding> Check(StripRun run) => run.Failures.Select(failure => failure switch
    {
        TooFewLeft left => Left(left),
        TooFewOff off when off.Asked > off.Joint.Count || off.Renewed > 0 => Renewed(off),
        _ => null,
    }).OfType<Finding>();

    private static Finding Left(TooFewLeft failure) => StepFinding.At(
        Id,
        failure.Step,
        $"{failure.Asked} of {ItemPhrases.The(failure.Joint)} are to be {ActionTable.Row(failure.Step.Verb).Done} and "
            + $"{failure.Attached} {(failure.Attached == 1 ? "is" : "are")} there",
        $"{failure.Attached} × {failure.Joint.Kind.Title} left",
        [new LabeledSpan(failure.Joint.Declared, $"{failure.Joint.Count} declared here")]) with
    {
        Help = $"leave the number out to take all that are left, or write {failure.Attached}",
    };

    private static Finding Renewed(TooFewOff failure) => StepFinding.At(
        Id,
        failure.Step,
        $"{failure.Asked} of {ItemPhrases.The(failure.Joint)} are to be replaced and "
            + (failure.Renewed > 0 ? $"{failure.Renewed} of {failure.Joint.Count} are new by then" : $"there are {failure.Joint.Count}"),
        failure.Renewed > 0 ? $"{failure.Joint.Count - failure.Renewed} old ones left" : $"{failure.Joint.Count} in all",
        [new LabeledSpan(failure.Joint.Declared, $"{failure.Joint.Count} declared here")]) with
    {
        Help = "leave the number out to replace all of them, or correct it",
    };
}
