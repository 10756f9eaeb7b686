using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>Something is worked on where nobody can get at it.</summary>
public sealed class WorkOutOfReach : StripFailureRule<WorkNotReached>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3013", "work-out-of-reach", "Something is worked on where nobody can get at it", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step cleans, inspects, repairs or adjusts something that is neither out nor open to a hand where it sits.",
        Why: "The work is not done, or is ticked without being done.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" { behind guard }
            }

            procedure clean_filter "Clean the filter" on press {
              stage "Guard" {
                release guard_pins
              }
              work {
                clean filter
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" { behind guard }
            }

            procedure clean_filter "Clean the filter" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
              work {
                clean filter
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(WorkNotReached failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"nobody can get at {ItemPhrases.The(failure.Target)} where it is",
        ItemPhrases.List(failure.Lacking.Select(NeedPhrases.IsNot)),
        failure.Lacking.Where(need => need.Declared is not null)
            .Select(need => NeedPhrases.Place(need, failure.Target))) with
    {
        Help = failure.Target is Part
            ? $"take {ItemPhrases.The(failure.Target)} out first, or clear the way to it"
            : $"clear the way to {ItemPhrases.The(failure.Target)} first",
    };
}
