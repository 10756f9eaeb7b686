using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.OneWay;

/// <summary>Something that must be renewed once it is disturbed goes back as it was, or stays in.</summary>
public sealed class MustBeRenewed : RefitFailureRule<Runs.Failures.MustBeRenewed>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5031", "must-be-renewed", "What was disturbed is not renewed", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The machine says `renew with` of a part or a joint, one of those that it names comes off in the job, and the part or joint goes back "
            + "as it was or stays in place.",
        Why: "A gasket that has been pressed flat once, or a seal whose cover was lifted, does not seal a second time. Nobody sees that from "
            + "outside until it leaks.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part seal "guard seal" { behind guard  renew with guard }
            }

            procedure seal_out "Take the guard seal out" on press {
              stage "Guard" {
                release guard_pins
                remove guard
                remove seal
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part seal "guard seal" { behind guard  renew with guard }
            }

            procedure seal_out "Take the guard seal out" on press {
              stage "Guard" {
                release guard_pins
                remove guard
                remove seal
              }
              work { replace seal }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(Runs.Failures.MustBeRenewed failure, RefitAttempt attempt)
    {
        var (item, disturbance) = (failure.Item, failure.Disturbance);
        var disturbing = RefitFinding.Step(disturbance)!;
        var cause = ItemPhrases.Doing(disturbance.Verb, disturbance.Target);
        var declared = new LabeledSpan(item.Declared, "declared `renew with`");
        return failure.Opening is { } opening
            ? StepFinding.At(
                Id,
                RefitFinding.Step(opening)!,
                $"{ItemPhrases.The(item)} goes back as it was, and must be renewed once {cause}",
                "it comes off here and is not replaced",
                [new LabeledSpan(disturbing.VerbSpan, $"{cause} here"), declared]) with
            {
                Help = $"write `replace {item.Name}` in the work, or `discard {item.Name} because \"…\"`",
                Fixes = [.. StepEdits.Replace(attempt.Strip, item)],
            }
            : StepFinding.At(
                Id,
                disturbing,
                $"{ItemPhrases.The(item)} {Stays(item, attempt)}, and must be renewed once {cause}",
                $"this disturbs {ItemPhrases.The(item)}",
                [declared]) with
            {
                Help = $"take it off and write `replace {item.Name}` in the work",
            };
    }

    private static string Stays(MachineItem item, RefitAttempt attempt) =>
        item is Joint joint && attempt.Strip.End.Attached(joint) < joint.Count ? "stays on in part" : "stays as it is";
}
