using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>
/// An energy is isolated, and nothing proves that it is off. Verification before work is the last step of 29 CFR 1910.147 (d), read in
/// the annual CFR edition of 2002.
/// </summary>
public sealed class EnergyNotVerified : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5041", "energy-not-verified", "An energy is isolated, and nothing proves it", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A procedure isolates an energy that has no `verify`.",
        Why: "The wrong fuse, a second feed, a valve that leaks: an energy counts as off when it has been tried and measured, not when a "
            + "switch has been turned. It is a warning, for a sound procedure almost never does without; where nothing can be tried or read, "
            + "allow it and say why.",
        Wrong: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator. Lock it."  restore "Unlock and switch on." }
              part loom "loom"
              part lamp "work lamp" { wired by 1 plug_2 as lamp_plug { to loom  on mains } }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                isolate mains
                unplug lamp_plug
                remove lamp
              }
            }
            """,
        Right: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" {
                isolate "Switch off at the isolator. Lock it."
                verify  "Press both start buttons: nothing moves and no lamp is lit."
                restore "Unlock and switch on."
              }
              part loom "loom"
              part lamp "work lamp" { wired by 1 plug_2 as lamp_plug { to loom  on mains } }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                isolate mains
                unplug lamp_plug
                remove lamp
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome) =>
        from action in outcome.Strip?.Actions ?? []
        where action is { Verb: Verb.Isolate, Target: Energy { Verify: null } energy } && !HasRuleOfItsOwn(energy)
        select At((Energy)action.Target!, action);

    private static bool HasRuleOfItsOwn(Energy energy) =>
        energy.Has(Hazard.HighVoltage) || energy.Has(Hazard.Pressure) || energy.Has(Hazard.Spring);

    private static Finding At(Energy energy, PerformedAction isolated) =>
        new(Id, $"{ItemPhrases.The(energy)} is isolated, and nothing proves that it is off", energy.Declared, "has no `verify`")
        {
            Related = [new LabeledSpan(StepOrigin.Source(isolated), "isolated here")],
            Help = "write `verify \"…\"`: what to try or to measure, with `expect` where a reading is taken",
        };
}
