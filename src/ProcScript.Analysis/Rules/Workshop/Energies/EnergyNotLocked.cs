using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>
/// An energy that others can bring back is isolated and not held off. Locks or tags are the fourth step of 29 CFR 1910.147 (d), read; a plug
/// under the exclusive control of whoever works needs none, (a)(2)(iii)(A), read in a quotation.
/// </summary>
public sealed class EnergyNotLocked : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5058", "energy-not-locked", "An energy is isolated, and nothing holds it off", Severity.Warning);

    private const double Volts = 48;

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An energy of gas, hydraulics, pneumatics, or of 48 V and more, as its title says, or with the mark `hazard pressure`, `restraint` or `refrigerant`, has no `lock`, and its `isolate` speaks of no "
            + "lock, tag, pocket or plug in sight. High voltage is for PRC5044. The rule knows English words from a list.",
        Why: "Somebody who does not see the hand in the machine opens the cock or puts the fuse back. A lock or a tag on the isolating device comes "
            + "before stored energy is let out and the isolation verified: 29 CFR 1910.147 (d). It is a warning, for an isolation may hold by "
            + "itself, such as a hose that is taken off; say so with `lock`.",
        Wrong: """
            machine press "Press" {
              energy air "compressed air" {
                hazard  pressure
                isolate "Close the cock."
                bleed   "Hold the blow gun down until it is silent."
                verify  "Read the gauge." expect <= 0.1 bar
                restore "Open the cock."
              }
            }
            """,
        Right: """
            machine press "Press" {
              energy air "compressed air" {
                hazard  pressure
                isolate "Close the cock."
                lock    "Hang your lock on the cock."
                bleed   "Hold the blow gun down until it is silent."
                verify  "Read the gauge." expect <= 0.1 bar
                restore "Open the cock."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from energy in facts.Machine.Energies
        where energy.Lock is null && !energy.Has(Hazard.HighVoltage) && What(facts, energy) is not null && !EnergyWords.SpeaksOfLock(energy.Isolate ?? "")
        select new Finding(Id, $"{ItemPhrases.The(energy)} is {What(facts, energy)}, and nothing holds it off once it is isolated", energy.Declared, "has no `lock`")
        {
            Help = "write `lock \"…\"`: a lock, a tag, the fuse in the pocket, or why nobody can bring it back",
        };

    /// <summary>What it is that others can bring back; null for other energies.</summary>
    private static string? What(MachineFacts facts, Energy energy)
    {
        if (EnergyWords.IsGas(energy.Title))
        {
            return "gas";
        }

        if (EnergyWords.IsFluidPower(energy.Title))
        {
            return "fluid power";
        }

        if (energy.Has(Hazard.Pressure) || energy.Has(Hazard.Restraint) || energy.Has(Hazard.Refrigerant))
        {
            return energy.Has(Hazard.Restraint) ? "able to fire a restraint" : "marked as a hazard";
        }

        var supply = ElectricSupply.Of(energy);
        return supply.Voltage?.BaseValue >= Volts && !supply.IsHigh(facts.Settings) ? "a supply of 48 V or more" : null;
    }
}
