using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A part is taken out while a joint still ties it to the rest.</summary>
public sealed class RemovedWhileHeld : StripFailureRule<StillHeld>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3001", "removed-while-held", "A part is removed while a joint still holds it", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part is taken out while fasteners, clips, connectors, lines or bonds still tie it, or something inside it, to "
            + "the rest of the machine.",
        Why: "Whoever follows the card pulls at a part that hangs on a wire or a bolt: the connector tears out of its wires, "
            + "the line bends, or the part comes down on one side.",
        Wrong: """
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              part loom "loom"
              part guard "guard" {
                held by 4 pin as guard_pins
                wired by 1 plug_2 as lamp_plug { to loom  behind guard }
                aside "Hang the guard on its hook." needs guard_pins
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                aside guard
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              part loom "loom"
              part guard "guard" {
                held by 4 pin as guard_pins
                wired by 1 plug_2 as lamp_plug { to loom  behind guard }
                aside "Hang the guard on its hook." needs guard_pins
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                aside guard
                unplug lamp_plug
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(StillHeld failure, StripRun run)
    {
        var openings = failure.Ties.Select(tie => ActionTable.OpeningOf(tie.Joint)).ToList();
        return StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.The(failure.Part)} is still held when it is removed",
            ItemPhrases.List(failure.Ties.Select(ItemPhrases.Still)),
            failure.Ties.Select(tie => new LabeledSpan(tie.Joint.Declared, "declared here"))) with
        {
            Help = $"{ItemPhrases.List(openings.Select(ItemPhrases.Cue))} first{Reached(failure)}",
            Fixes = [.. StepEdits.InsertBefore(run, failure.Step, openings)],
        };
    }

    /// <summary>How a joint that hides behind something is reached, where it is the only one.</summary>
    private static string Reached(StillHeld failure)
    {
        if (failure.Ties is not [var tie])
        {
            return "";
        }

        var hidden = tie.Joint.Conditions.Where(condition => condition.State == NeededState.OutOfTheWay).Select(condition => condition.Item);
        var ways = ItemPhrases.List(hidden.Select(item => item is Part { Aside: not null } ? $"{ItemPhrases.The(item)} aside" : $"{ItemPhrases.The(item)} off"));
        return ways.Length == 0 ? "" : $"; it is reached with {ways}";
    }
}
