using System.Collections.Immutable;
using ProcScript.Analysis.Energies;
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
            + "expects a reading. The same of the energies that must be isolated for a part or a joint with such a mark, by `on` or `needs`, "
            + "unless they are of electricity. And a part or a joint under pressure for which no energy must be isolated and no fluid be out.",
        Why: "Closing a valve shuts the pressure in. What is stored has to be let out, held back or drained, and then proved to be gone: a "
            + "gauge for pressure, an eye or a hand for a spring. It is a warning; where the isolation itself lets everything out, say so with "
            + "`bleed`.",
        Wrong: """
            machine lift "Lift" {
              energy ram_pressure "ram pressure" {
                hazard  pressure
                isolate "Close the shut-off valve."
                lock    "Hang your tag on the valve."
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
                lock    "Hang your tag on the valve."
                bleed   "Open the drain screw slowly, until nothing more comes."
                verify  "Read the gauge." expect <= 0.5 bar
                restore "Close the drain screw. Open the shut-off valve."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        facts.Machine.Energies.Select(Judge)
            .Concat(facts.Machine.Parts.Where(IsMarked).Select(part => Judge(part, StoredIn.Of(facts, part))))
            .Concat(facts.Machine.Joints.Where(IsMarkedItself).Select(joint => Judge(joint, StoredIn.Of(joint))))
            .OfType<Finding>();

    private static bool IsMarked(MachineItem item) => item.Has(Hazard.Pressure) || item.Has(Hazard.Spring);

    /// <summary>A spring that belongs to the kind, as that of a locking pin does, is let go by opening the joint.</summary>
    private static bool IsMarkedItself(Joint joint) =>
        joint.Has(Hazard.Pressure) || (joint.Has(Hazard.Spring) && !joint.Kind.Hazards.Contains(Hazard.Spring));

    private static Finding? Judge(Energy energy) =>
        IsMarked(energy) && !energy.Has(Hazard.HighVoltage) && Lacks(energy, energy.Has(Hazard.Pressure)) is { Length: > 0 } lacks
            ? new Finding(
                Id,
                $"{ItemPhrases.The(energy)} stays stored when it is isolated: it has no {string.Join(" and no ", lacks)}",
                energy.Declared,
                energy.Has(Hazard.Pressure) ? "under pressure" : "a loaded spring")
            {
                Help = "write how it is let out or held back, and how it is proved to be gone",
            }
            : null;

    private static Finding? Judge(MachineItem item, StoredIn stored)
    {
        var isPressure = item.Has(Hazard.Pressure);
        if (stored.Energies.Count == 0)
        {
            return isPressure && !stored.IsDrained ? LetOutByNothing(item) : null;
        }

        // An energy that bears the mark itself is told of where it stands; one that lets all out is enough.
        var worst = stored.Energies.All(energy => !IsMarked(energy) && Lacks(energy, isPressure).Length > 0) ? stored.Energies.First() : null;
        return worst is null
            ? null
            : new Finding(
                Id,
                $"{ItemPhrases.The(item)} is {(isPressure ? "under pressure" : "a loaded spring")}, and {ItemPhrases.The(worst)} that is isolated for it "
                    + $"has no {string.Join(" and no ", Lacks(worst, isPressure))}",
                item.Declared,
                isPressure ? "under pressure" : "a loaded spring")
            {
                Related = [new LabeledSpan(worst.Declared, "isolated for it")],
                Help = $"write at {ItemPhrases.The(worst)} how it is let out or held back, and how it is proved to be gone",
            };
    }

    private static Finding LetOutByNothing(MachineItem item) =>
        new(Id, $"{ItemPhrases.The(item)} is under pressure, and nothing lets it out before it is opened", item.Declared, "under pressure")
        {
            Help = "say by `on` or `needs` which energy is isolated for it, or by `carries` which fluid is drained; where it stays under pressure for "
                + "good and is never opened, allow it and say so",
        };

    private static ImmutableArray<string> Lacks(Energy energy, bool isPressure) =>
    [
        .. energy.Bleed is null ? ["`bleed`"] : Array.Empty<string>(),
        .. energy switch
        {
            { Verify: null } => ["`verify`"],
            { VerifyExpect: null } when isPressure => ["reading that its `verify` expects"],
            _ => Array.Empty<string>(),
        },
    ];
}
