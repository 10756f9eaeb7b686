using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>
/// What guards an energy that can kill or maim comes off while it is live. Isolation comes before the work, 29 CFR 1910.147 (d), read in the
/// annual CFR edition of 2002; which guard belongs to which energy is read off the machine.
/// </summary>
public sealed class GuardOffWhileLive : StripRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5040", "guard-off-while-live", "What guards a live energy comes off", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part that hides a joint on an energy, or something that needs it isolated, comes off or goes aside before the step that "
            + "isolates the energy. It is asked for energies with a `hazard` mark or a `danger`, and not where the part is in the way of the "
            + "energy's own switch.",
        Why: "Behind the guard are bare terminals, blades or jets, and the next hand in there belongs to somebody who trusts the card. It is a "
            + "warning because a guard may come off first to read or to set something live; allow it then, and say how people are kept away.",
        Wrong: """
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" {
                danger  "Mains voltage kills. Only a qualified person opens this circuit."
                isolate "Switch off at the isolator. Lock it."
                verify  "Press both start buttons: nothing moves and no lamp is lit."
                restore "Unlock and switch on."
              }
              part guard "guard" { held by 4 pin as guard_pins }
              part loom "loom"
              part lamp "work lamp" { behind guard  wired by 1 plug_2 as lamp_plug { to loom  on mains } }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                release guard_pins
                remove guard
                isolate mains
                unplug lamp_plug
                remove lamp
              }
            }
            """,
        Right: """
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" {
                danger  "Mains voltage kills. Only a qualified person opens this circuit."
                isolate "Switch off at the isolator. Lock it."
                verify  "Press both start buttons: nothing moves and no lamp is lit."
                restore "Unlock and switch on."
              }
              part guard "guard" { held by 4 pin as guard_pins }
              part loom "loom"
              part lamp "work lamp" { behind guard  wired by 1 plug_2 as lamp_plug { to loom  on mains } }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                isolate mains
                release guard_pins
                remove guard
                unplug lamp_plug
                remove lamp
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(StripRun run)
    {
        // Only those that are isolated later: a job that does not open the circuit may open what it lies behind.
        var live = run.Actions
            .Where(action => action.Verb == Verb.Isolate)
            .Select(action => action.Target)
            .OfType<Energy>()
            .Where(CanKill)
            .ToList();
        if (live.Count == 0)
        {
            yield break;
        }

        foreach (var action in run.Actions)
        {
            switch (action)
            {
                case { Verb: Verb.Isolate, Target: Energy isolated }:
                    live.Remove(isolated);
                    break;
                case { Verb: Verb.Remove or Verb.Aside, Target: Part { IsTemporary: false } part } when RefitFinding.Step(action) is { } step:
                    // Each energy is told once: what comes off after the first guard only makes the gap wider.
                    foreach (var energy in live.Where(energy => run.Facts.Guards.Of(energy, []).Contains(part)).ToList())
                    {
                        live.Remove(energy);
                        yield return At(step, action, energy);
                    }

                    break;
            }
        }
    }

    private static bool CanKill(Energy energy) =>
        !energy.Hazards.IsEmpty || energy.Alerts.Any(alert => alert.Word == SignalWord.Danger);

    private static Finding At(Step step, PerformedAction action, Energy energy) => StepFinding.At(
        Id,
        step,
        $"{ItemPhrases.Doing(action.Verb, action.Target)} while {ItemPhrases.The(energy)} is live, and guards it",
        "the energy is still live",
        [new LabeledSpan(energy.Declared, "can hurt badly"), new LabeledSpan(action.Target!.Declared, "hides what it reaches")]) with
    {
        Help = $"isolate {ItemPhrases.The(energy)} first",
    };
}
