using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>A voltage that is not high is marked as high. The limits are those of <see cref="HighVoltageIncomplete"/>.</summary>
public sealed class HighVoltageOverstated : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5057", "high-voltage-overstated", "A voltage that is not high is marked as high", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An energy with the mark `hazard high_voltage` has a voltage in its title that is no more than 60 V of direct current "
            + "(`limits.safeVoltage`), or than 30 V of alternating current or where nothing says how it flows (`limits.safeVoltageAlternating`).",
        Why: "A card that says *this kills* of a scooter's battery is read past where it is true. What such a battery does, an arc that burns and "
            + "blinds, an alert of its own says better. It is a hint: a battery of 48 V may stand beside a charger with mains in it.",
        Wrong: """
            machine trike "Trike" {
              energy traction "48 V traction battery" {
                hazard  high_voltage
                isolate "Pull the service plug."
                lock    "Keep the service plug on your person."
                wait    5 min
                verify  "Measure at both poles" expect <= 3 V
                restore "Push the service plug home."
              }
            }
            """,
        Right: """
            machine trike "Trike" {
              energy traction "48 V traction battery" {
                warning "A short arcs, burns and blinds. Take off rings and watches."
                isolate "Pull the service plug."
                lock    "Keep the service plug on your person."
                wait    5 min
                verify  "Measure at both poles" expect <= 3 V
                restore "Push the service plug home."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from energy in facts.Machine.Energies
        where energy.Has(Hazard.HighVoltage)
        let supply = ElectricSupply.Of(energy)
        where supply.IsLow(facts.Settings)
        select new Finding(
            Id,
            $"{ItemPhrases.The(energy)} is marked as high voltage, and {supply.Voltage!.Print()} is no more than {supply.MostWhenDead(facts.Settings).Print()}",
            energy.Declared,
            "not high voltage by these limits")
        {
            Help = "take the mark off, and say in an alert what it does; or say in its title which voltage is the high one",
        };
}
