using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A joint is opened while its cover is on.</summary>
public sealed class StillCovered : StripFailureRule<Runs.Failures.StillCovered>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3003", "still-covered", "A joint is opened while its cover is on", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint that the machine declares `covered by` or `locked by` something is opened, and the cover has not been released or the lock "
            + "is still in.",
        Why: "The head of the bolt is under the cap. The card sends the technician to something that cannot be seen, and the "
            + "cap is broken or lost.",
        Wrong: """
            tool key_6 "6 mm key"
            clip cap "bolt cap"
            fastener m8 "M8 × 25 bolt" { drive key_6 }

            machine press "Press" {
              part guard "guard" {
                held by 4 m8 as guard_bolts covered by 4 cap as guard_caps
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts
                remove guard
              }
            }
            """,
        Right: """
            tool key_6 "6 mm key"
            clip cap "bolt cap"
            fastener m8 "M8 × 25 bolt" { drive key_6 }

            machine press "Press" {
              part guard "guard" {
                held by 4 m8 as guard_bolts covered by 4 cap as guard_caps
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_caps
                undo guard_bolts
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(Runs.Failures.StillCovered failure, StripRun run)
    {
        var openings = failure.Covers.Select(cover => ActionTable.OpeningOf(cover.Joint)).ToList();
        var isLocked = failure.Covers.All(cover => cover.Joint.IsLock);
        return StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.Doing(failure.Step.Verb, failure.Joint)} while it is still {(isLocked ? "locked" : "covered")}",
            ItemPhrases.List(failure.Covers.Select(ItemPhrases.Still)),
            failure.Covers.Select(cover => new LabeledSpan(cover.Joint.Declared, $"the {(cover.Joint.IsLock ? "lock" : "cover")} is declared here"))) with
        {
            Help = $"{ItemPhrases.List(openings.Select(ItemPhrases.Cue))} first",
            Fixes = [.. StepEdits.InsertBefore(run, failure.Step, openings)],
        };
    }
}
