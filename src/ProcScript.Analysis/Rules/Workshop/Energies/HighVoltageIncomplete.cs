using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>
/// High voltage without all that makes it safe. Above 60 V direct and 30 V alternating current: the scope of 49 CFR 571.305 (S3) and the
/// summary of DGUV Information 200-006, read in stored copies; a circuit that is proved dead reads no more. The five steps of electrical
/// safety name securing against reconnection and proving dead; the list itself is from memory. The wait of 5 min is common practice: a
/// stored safety checklist for electric vehicles, read.
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
            + "volts: 60 V at most of direct current (`limits.safeVoltage` may ask for less), 30 V of alternating current or where nothing says "
            + "how the current flows (`limits.safeVoltageAlternating`). Or it waits less than 5 min (`limits.highVoltageWait` may ask for more); "
            + "of alternating current that is asked only with a `bleed`, which says that charge is stored.",
        Why: "High voltage is invisible and kills. Somebody puts the plug back; capacitors hold their charge for minutes; a dead meter reads "
            + "nothing on a live circuit. Only a qualified person works on it, by the manufacturer's data. It is a warning, for the words may "
            + "stand in a paper of their own: allow it then, and name the paper. A shorter wait that the manufacturer gives is allowed likewise.",
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
        let lacks = Lacks(energy, ElectricSupply.Of(energy), facts.Settings).ToList()
        where lacks.Count > 0
        select new Finding(Id, $"{ItemPhrases.The(energy)} is high voltage and lacks {ItemPhrases.List(lacks)}", energy.Declared, "high voltage")
        {
            Help = "write what the manufacturer's data say; who locks keeps the service plug, and the meter is proved live, dead, live",
        };

    private static IEnumerable<string> Lacks(Energy energy, ElectricSupply supply, PathSettings settings)
    {
        if (energy.Lock is null)
        {
            yield return "a `lock`";
        }

        if (energy is { Wait: null, Bleed: null })
        {
            yield return "a `wait` or a `bleed`";
        }

        var least = settings.Get(SettingsTable.HighVoltageWait);
        if (energy.Wait is { } wait && wait.BaseValue < least.BaseValue && (supply.Current != CurrentKind.Alternating || energy.Bleed is not null))
        {
            yield return $"a `wait` of {least.Print()} or more (it waits {wait.Print()})";
        }

        if (energy.VerifyExpect is not { Quantity.Unit.Dimension: Dimension.Voltage } limit)
        {
            yield return "a `verify` with a reading in volts";
        }
        else if (DeadReading.Fault(energy) is null && supply.MostWhenDead(settings) is var most && !EndsBelow(limit, most))
        {
            yield return $"a `verify` that expects {most.Print()} at most{(supply.Current == CurrentKind.Unknown ? ", for nothing says how its current flows" : "")} "
                + $"(it expects {limit.Print()})";
        }
    }

    private static bool EndsBelow(Limit limit, Quantity most) =>
        limit.Relation is not (LimitRelation.AtLeast or LimitRelation.More) && limit.Quantity.High * limit.Quantity.Unit.Factor <= most.BaseValue;
}
