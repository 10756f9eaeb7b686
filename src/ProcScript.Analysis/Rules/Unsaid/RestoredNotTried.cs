using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>Something was opened on an energy, that is back, and nobody tries what was worked on. Common practice, no source.</summary>
public sealed class RestoredNotTried : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8007", "restored-not-tried", "An energy comes back, and nothing is tried after", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A procedure with a goal opens a plug or another joint on an energy, and from where the energy comes back, in a test or for good, no "
            + "check and no measurement follows. Lines are for PRC8006 and PRC5053.",
        Why: "A plug that is not home, a wire that is pinched: whoever closed it is the one to notice, while the tools are still there.",
        Wrong: """
            connector plug_2 "2-way connector"

            machine lamp "Work lamp" {
              energy battery "12 V battery" { isolate "Take the negative cable off."  verify "The lamp stays dark."  restore "Fit the cable." }
              part head "lamp head" { wired by 1 plug_2 as head_plug on battery }
            }

            procedure head_off "Take the lamp head off" on lamp {
              goal remove head
              stage "Head" {
                isolate battery
                unplug head_plug
                remove head
              }
            }
            """,
        Right: """
            connector plug_2 "2-way connector"

            machine lamp "Work lamp" {
              energy battery "12 V battery" { isolate "Take the negative cable off."  verify "The lamp stays dark."  restore "Fit the cable." }
              part head "lamp head" { wired by 1 plug_2 as head_plug on battery }
            }

            procedure head_off "Take the lamp head off" on lamp {
              goal remove head
              stage "Head" {
                isolate battery
                unplug head_plug
                remove head
              }
              refit { check "The lamp lights." needs battery live }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        if (outcome is not { Strip: { } strip, Refit: { } refit, Procedure.Goals.IsEmpty: false })
        {
            yield break;
        }

        foreach (var energy in outcome.Procedure.Machine.Energies)
        {
            var restored = refit.Actions.FirstOrDefault(action => action.Verb == Verb.Restore && action.Target == energy);
            var opened = strip.Actions.FirstOrDefault(action => IsOpening(action, energy) && !strip.Discarded.Contains(action.Target!));
            if (restored is not null
                && RefitFinding.Step(opened) is { } step
                && !refit.Actions.Any(action => action.Number >= restored.Number && TakenReading.Of(action).Any()))
            {
                yield return At(step, (Joint)opened!.Target!, energy);
            }
        }
    }

    private static bool IsOpening(PerformedAction action, Energy energy) =>
        action is { Target: Joint { Role: not JointRole.Piped } joint, Changes: [{ Variable.Kind: StateKind.Attached, After: 0 }] } && joint.On == energy;

    private static Finding At(Step step, Joint joint, Energy energy) => StepFinding.At(
        Id,
        step,
        $"{ItemPhrases.Doing(step.Verb, joint)}, and once {ItemPhrases.The(energy)} is back nothing is tried",
        "opened here",
        new LabeledSpan(energy.Declared, "it is on this")) with
    {
        Help = $"write into the refit what shows that it works: `check \"…\" needs {energy.Name} live`",
    };
}
