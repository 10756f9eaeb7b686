using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A part goes aside while a joint that keeps it is tight.</summary>
public sealed class AsideWhileTight : StripFailureRule<StillTight>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3010", "aside-while-tight", "A part goes aside while a joint that keeps it is tight", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part is moved aside, and a joint that its `aside` names in the machine is neither off nor slack.",
        Why: "The part cannot move while it is held. Pulled by force it bends, or the joint tears.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" {
                held by 4 pin as guard_pins
                aside "Swing the guard up." needs guard_pins
              }
              part filter "filter" { behind guard }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                aside guard
                remove filter
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" {
                held by 4 pin as guard_pins
                aside "Swing the guard up." needs guard_pins
              }
              part filter "filter" { behind guard }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                release guard_pins
                aside guard
                remove filter
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(StillTight failure, StripRun run)
    {
        var openings = failure.Ties.Select(tie => ActionTable.OpeningOf(tie.Joint)).ToList();
        return StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.The(failure.Part)} is still held when it goes aside",
            ItemPhrases.List(failure.Ties.Select(ItemPhrases.Still)),
            [
                new LabeledSpan(failure.Part.Aside!.Declared, "its way aside is declared here"),
                .. failure.Ties.Select(tie => new LabeledSpan(tie.Joint.Declared, "declared here")),
            ]) with
        {
            Help = $"{ItemPhrases.List(openings.Select(ItemPhrases.Cue))} first",
            Fixes = [.. StepEdits.InsertBefore(run, failure.Step, openings)],
        };
    }
}
