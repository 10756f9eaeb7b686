using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>
/// High voltage without all that makes it safe. Work counts as such above 60 V DC (e-safe-consulting.com on DGUV Information 209-093 and
/// DIN VDE 0105-100, read); a circuit that is proved dead reads no more. The five steps of electrical safety name securing against
/// reconnection and proving dead; the list itself is from memory.
/// </summary>
public sealed class HighVoltageIncomplete : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5044", "high-voltage-incomplete", "High voltage is isolated without all that makes it safe", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An energy with the mark `hazard high_voltage` lacks a `lock`, a `wait` or `bleed`, or a `verify` that expects a reading in "
            + "volts of 60 V at most (`limits.safeVoltage` may ask for less).",
        Why: "High voltage is invisible and kills. Somebody puts the plug back; capacitors hold their charge for minutes; a dead meter reads "
            + "nothing on a live circuit. Only a qualified person works on it, by the manufacturer's data. It is a warning, for the words may "
            + "stand in a paper of their own: allow it then, and name the paper.",
        Wrong: """
            machine trike "Trike" {
              energy traction "400 V traction battery" {
                hazard  high_voltage
                isolate "Pull the service plug."
                verify  "Try the drive: nothing moves."
                restore "Push the service plug home."
              }
            }
            """,
        Right: """
            machine trike "Trike" {
              energy traction "400 V traction battery" {
                hazard  high_voltage
                isolate "Pull the service plug."
                lock    "Keep the service plug on your person."
                wait    10 min
                verify  "Measure at both poles, with a meter proved live, dead, live." expect <= 5 V
                restore "Push the service plug home."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from energy in facts.Machine.Energies
        where energy.Has(Hazard.HighVoltage)
        let lacks = Lacks(energy, facts.Settings.Get(SettingsTable.SafeVoltage)).ToList()
        where lacks.Count > 0
        select new Finding(Id, $"{ItemPhrases.The(energy)} is high voltage and lacks {ItemPhrases.List(lacks)}", energy.Declared, "high voltage")
        {
            Help = "write what the manufacturer's data say; who locks keeps the service plug, and the meter is proved live, dead, live",
        };

    private static IEnumerable<string> Lacks(Energy energy, Quantity most)
    {
        if (energy.Lock is null)
        {
            yield return "a `lock`";
        }

        if (energy is { Wait: null, Bleed: null })
        {
            yield return "a `wait` or a `bleed`";
        }

        if (energy.VerifyExpect is not { Quantity.Unit.Dimension: Dimension.Voltage } limit)
        {
            yield return "a `verify` with a reading in volts";
        }
        else if (!EndsBelow(limit, most))
        {
            yield return $"a `verify` that expects {most.Print()} at most (it expects {limit.Print()})";
        }
    }

    private static bool EndsBelow(Limit limit, Quantity most) =>
        limit.Relation is not (LimitRelation.AtLeast or LimitRelation.More) && limit.Quantity.High * limit.Quantity.Unit.Factor <= most.BaseValue;
}
