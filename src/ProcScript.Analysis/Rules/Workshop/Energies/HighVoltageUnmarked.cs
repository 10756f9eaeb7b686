using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>A voltage that is high is not marked as high. The limits are those of <see cref="HighVoltageIncomplete"/>.</summary>
public sealed class HighVoltageUnmarked : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5059", "high-voltage-unmarked", "A voltage that is high is not marked as high", Severity.Warning)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An energy has a `voltage`, or one in its title, that is above 60 V of direct current (`limits.safeVoltage`) or 30 V of alternating current "
            + "(`limits.safeVoltageAlternating`), above both where nothing says how the current flows, and neither the mark `hazard high_voltage` nor "
            + "a `danger` of its own.",
        Why: "The mark is what puts the danger on the cards and asks for lock, wait and a reading. Without it, 230 V get the words of a bicycle "
            + "lamp. It is a warning because a title may name a voltage that is not the energy's own; allow it then, and say so.",
        Wrong: """
            machine saw "Saw" {
              energy mains "230 V mains" {
                isolate "Pull the plug."
                lock    "Keep the plug in sight."
                wait    10 s
                verify  "Measure at the motor" expect <= 1 V
                restore "Put the plug in."
              }
            }
            """,
        Right: """
            machine saw "Saw" {
              energy mains "230 V mains" {
                hazard  high_voltage
                isolate "Pull the plug."
                lock    "Keep the plug in sight."
                wait    10 s
                verify  "Measure at the motor" expect <= 1 V
                restore "Put the plug in."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from energy in facts.Machine.Energies
        where !energy.Has(Hazard.HighVoltage) && energy.Alerts.All(alert => alert.Word != SignalWord.Danger)
        let supply = ElectricSupply.Of(energy)
        where supply.IsHigh(facts.Settings)
        select new Finding(
            Id,
            $"{ItemPhrases.The(energy)} is not marked as high voltage, and {supply.Voltage!.Print()} is above {supply.MostWhenDead(facts.Settings).Print()}",
            energy.Declared,
            "has no `hazard high_voltage`")
        {
            Help = "write `hazard high_voltage`: the cards then warn of it, and what makes it safe is asked for",
            Fixes = [.. HazardEdits.Mark(energy, Hazard.HighVoltage)],
        };
}
