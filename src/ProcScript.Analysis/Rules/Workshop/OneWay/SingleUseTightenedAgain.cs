using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.OneWay;

/// <summary>Fasteners that serve once are loosened and tightened again.</summary>
public sealed class SingleUseTightenedAgain : RefitFailureRule<SingleUseTightened>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5032",
        "single-use-tightened-again",
        "A fastener that serves once is tightened again",
        Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint of a `single use` kind is loosened and stays on, so that the refit tightens the old fasteners a second time. Those that come "
            + "off need no finding: new ones go back, and the order list has them.",
        Why: "A bolt that was tightened beyond its yield point has stretched. Tightened again it necks and breaks, in the hand or on the road; a "
            + "lock nut has lost its grip.",
        Wrong: """
            tool socket_13 "13 mm socket"
            fastener stretch_bolt "M8 × 60 stretch bolt" { thread M8x1.25  grade 10.9  single use  drive socket_13  torque 30 N.m + 90° }

            machine press "Press" {
              part guard "guard" { held by 2 stretch_bolt as guard_bolts  aside "Swing it down." needs guard_bolts }
            }

            procedure guard_down "Swing the guard down" on press {
              stage "Guard" {
                loosen guard_bolts
                aside guard
              }
            }
            """,
        Right: """
            tool socket_13 "13 mm socket"
            fastener stretch_bolt "M8 × 60 stretch bolt" { thread M8x1.25  grade 10.9  single use  drive socket_13  torque 30 N.m + 90° }

            machine press "Press" {
              part guard "guard" { held by 2 stretch_bolt as guard_bolts  aside "Swing it down." needs guard_bolts }
            }

            procedure guard_down "Swing the guard down" on press {
              stage "Guard" {
                undo guard_bolts
                aside guard
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(SingleUseTightened failure, RefitAttempt attempt)
    {
        var (joint, step) = (failure.Joint, RefitFinding.Step(failure.Loosening)!);
        return StepFinding.At(
            Id,
            step,
            $"`{joint.Name}` serves once and is tightened again: {joint.Count} × {joint.Kind.Title}",
            "loosened here, and tightened in the refit",
            [new LabeledSpan(joint.Stretch && !joint.Kind.Stretch ? joint.Declared : joint.Kind.Declared, joint.Stretch ? "a stretch bolt" : "declared `single use`")]) with
        {
            Help = "undo it: then new ones go back",
            Fixes = step.Verb == Verb.Loosen && attempt.Strip.End.Attached(joint) == joint.Count ? [StepEdits.ReplaceVerb(step.VerbSpan, Verb.Undo)] : [],
        };
    }
}
