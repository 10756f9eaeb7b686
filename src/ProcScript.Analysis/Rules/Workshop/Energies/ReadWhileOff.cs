using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>A reading is taken, or a leak looked for, while what is read is off or drained. It follows from the run; no source.</summary>
public sealed class ReadWhileOff : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5054", "read-while-off", "A reading is taken while what is read is off", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A check or a measurement names an energy or a fluid by its title, or by the noun of it (`gas` of *natural gas supply*), and comes "
            + "at a moment when the energy is isolated or the fluid out; and it expects volts, amperes, pressure or flow other than zero, or "
            + "looks for a leak. Or it expects just the voltage of an energy that is isolated, while no energy of that voltage is live. A battery, "
            + "which reads the same on the bench, is left out, and so is a test with air, nitrogen or a vacuum.",
        Why: "The gauge reads zero, the leak spray makes no bubble, and the box is ticked. Or somebody opens the cock to get a reading, with the "
            + "union still loose. It is a warning because the text may mean another thing; allow it then, and say which.",
        Wrong: """
            line union "union" { release "Hold the pipe still." }

            machine boiler "Boiler" {
              energy gas "natural gas" {
                hazard  pressure
                isolate "Close the cock."
                lock    "Hang your tag on the cock."
                bleed   "Open the test nipple for a moment."
                verify  "Read the gauge at the test nipple" expect <= 1 mbar
                restore "Open the cock."
              }
              part valve "gas valve" { piped by 1 union as gas_union { on gas } }
            }

            procedure valve_off "Take the gas valve off" on boiler {
              stage "Valve" {
                isolate gas
                disconnect gas_union
                remove valve
              }
              refit { check "Gas pressure at the inlet" expect 18 .. 24 mbar before restore gas }
            }
            """,
        Right: """
            line union "union" { release "Hold the pipe still." }

            machine boiler "Boiler" {
              energy gas "natural gas" {
                hazard  pressure
                isolate "Close the cock."
                lock    "Hang your tag on the cock."
                bleed   "Open the test nipple for a moment."
                verify  "Read the gauge at the test nipple" expect <= 1 mbar
                restore "Open the cock."
              }
              part valve "gas valve" { piped by 1 union as gas_union { on gas } }
            }

            procedure valve_off "Take the gas valve off" on boiler {
              stage "Valve" {
                isolate gas
                disconnect gas_union
                remove valve
              }
              refit { check "Gas pressure at the inlet" expect 18 .. 24 mbar needs gas live }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        var machine = outcome.Procedure.Machine;
        if (outcome is not { Strip: { } strip, Refit: { } refit } || (machine.Energies.IsEmpty && machine.Fluids.IsEmpty))
        {
            yield break;
        }

        var off = new HashSet<MachineItem>();
        foreach (var action in strip.Actions.Concat(refit.Actions))
        {
            foreach (var change in action.Changes)
            {
                Follow(change, action.Target, off);
            }

            // Where all is on, which is most of the time, no text need be looked at.
            foreach (var reading in off.Count == 0 ? [] : TakenReading.Of(action).Where(reading => reading.NeedsPresence))
            {
                if (Missing(reading, strip.Facts.Supplies, off, machine) is { } missing)
                {
                    yield return At(action, reading, missing);
                }
            }
        }
    }

    private static void Follow(StateChange change, MachineItem? item, HashSet<MachineItem> off)
    {
        if (item is Energy or Fluid && change.Variable.Kind is StateKind.Live or StateKind.Full)
        {
            _ = change.After == 0 ? off.Add(item) : off.Remove(item);
        }
    }

    private static MachineItem? Missing(TakenReading reading, SupplyNames names, HashSet<MachineItem> off, Model.Machines.Machine machine)
    {
        List<MachineItem> named = [.. names.In(reading.Text).Where(reading.IsOf)];
        if (named.Count > 0)
        {
            // A noun may mean any of those that have it; one that is there may be the one that is meant.
            return named.TrueForAll(off.Contains) ? named[0] : null;
        }

        List<Energy> expected = [.. machine.Energies.Where(reading.ExpectsVoltageOf)];
        return expected.Count > 0 && expected.TrueForAll(off.Contains) && names.In(reading.Text).Count == 0 ? expected[0] : null;
    }

    private static Finding At(PerformedAction action, TakenReading reading, MachineItem missing)
    {
        var state = missing is Energy ? "isolated" : "out";
        var word = missing is Energy ? "live" : "full";
        var what = reading.Expect is { } expect ? $"\"{reading.Text}\" expects {expect.Print()}" : $"\"{reading.Text}\" looks for a leak";
        return new Finding(Id, $"{what}, and {ItemPhrases.The(missing)} is {state} at that moment", StepOrigin.Source(action), "nothing to read yet")
        {
            Related = [new LabeledSpan(missing.Declared, $"is {state} then")],
            Help = $"give the check `needs {missing.Name} {word}`, or let it stand where that is so",
        };
    }
}
