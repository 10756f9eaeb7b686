using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>
/// Pressure or a spring is isolated and not let out. Stored energy is relieved, disconnected or restrained before the verification:
/// 29 CFR 1910.147 (d)(5), read.
/// </summary>
public sealed class StoredEnergy : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5045", "stored-energy", "Stored energy is isolated and not let out", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An energy with the mark `hazard pressure` or `hazard spring` has no `bleed`, or no `verify`; of pressure, no `verify` that "
            + "expects a reading.",
        Why: "Closing a valve shuts the pressure in. What is stored has to be let out, held back or drained, and then proved to be gone: a "
            + "gauge for pressure, an eye or a hand for a spring. It is a warning; where the isolation itself lets everything out, say so with "
            + "`bleed`.",
        Wrong: """
            machine lift "Lift" {
              energy ram_pressure "ram pressure" {
                hazard  pressure
                isolate "Close the shut-off valve."
                verify  "Look at the ram: it stays where it is."
                restore "Open the shut-off valve."
              }
            }
            """,
        Right: """
            machine lift "Lift" {
              energy ram_pressure "ram pressure" {
                hazard  pressure
                isolate "Close the shut-off valve."
                bleed   "Open the drain screw slowly, until nothing more comes."
                verify  "Read the gauge." expect <= 0.5 bar
                restore "Close the drain screw. Open the shut-off valve."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from energy in facts.Machine.Energies
        let isPressure = energy.Has(Hazard.Pressure)
        where (isPressure || energy.Has(Hazard.Spring)) && !energy.Has(Hazard.HighVoltage)
        let lacks = Lacks(energy, isPressure).ToList()
        where lacks.Count > 0
        select new Finding(
            Id,
            $"{ItemPhrases.The(energy)} stays stored when it is isolated: it has no {string.Join(" and no ", lacks)}",
            energy.Declared,
            isPressure ? "under pressure" : "a loaded spring")
        {
            Help = "write how it is let out or held back, and how it is proved to be gone",
        };

    private static IEnumerable<string> Lacks(Energy energy, bool isPressure)
    {
        if (energy.Bleed is null)
        {
            yield return "`bleed`";
        }

        if (energy.Verify is null)
        {
            yield return "`verify`";
        }
        else if (isPressure && energy.VerifyExpect is null)
        {
            yield return "reading that its `verify` expects";
        }
    }
}
