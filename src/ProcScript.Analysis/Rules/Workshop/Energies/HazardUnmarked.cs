using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>A title names a hazard that no mark says. Common practice, no source.</summary>
public sealed class HazardUnmarked : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5055", "hazard-unmarked", "A title names a hazard that no mark says", Severity.Warning)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The title of an energy, a fluid or a part names what it can do to people, and the item has no such `hazard`, nor have its joints, their "
            + "energies or the part around it: pressure, hydraulics, steam or a gas that burns (`pressure`), a spring or a gas strut (`spring`), an airbag or a "
            + "pretensioner (`restraint`), refrigerant (`refrigerant`), high voltage (`high_voltage`). Of a part only what it stores itself counts. "
            + "The rule knows English words from a list; a voltage in figures is for PRC5059.",
        Why: "The mark is what puts the usual caution on the cards and brings the checks: how the pressure is let out, how long to wait. Without it "
            + "all of that is silent. It is a warning because a word may mean less than it says, such as a spring that is slack when it is "
            + "fitted; allow it then, and say so.",
        Wrong: """
            machine lift "Lift" {
              energy ram_pressure "ram pressure" {
                isolate "Close the shut-off valve."
                lock    "Hang your tag on the valve."
                bleed   "Open the drain screw slowly, until nothing more comes."
                verify  "Read the gauge." expect <= 0.5 bar
                restore "Close the drain screw. Open the shut-off valve."
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
        from item in facts.Machine.Energies.Concat<MachineItem>(facts.Machine.Fluids).Concat(facts.Machine.Parts)
        let named = HazardTitles.Of(item)
        where named is not null && !IsMarked(facts, item, named.Value.Hazard) && !IsToldElsewhere(facts, item, named.Value.Hazard)
        select At(item, named.Value.Hazard, named.Value.Words);

    private static bool IsMarked(MachineFacts facts, MachineItem item, Hazard hazard) => item switch
    {
        _ when item.Has(hazard) => true,
        Energy energy => facts.JointsOn(energy).Any(joint => joint.Has(hazard) || joint.Owner.Has(hazard)),
        // What is marked as refrigerant is known to be under pressure.
        Fluid fluid => fluid.Has(Hazard.Refrigerant) || facts.JointsCarrying(fluid).Any(joint => joint.Has(hazard)),
        Part part => part.Joints.Concat(facts.Ties(part)).Any(joint => joint.Has(hazard) || joint.On?.Has(hazard) == true) || part.Children.Any(child => child.Has(hazard)) || IsAroundMarked(part, hazard),
        _ => false,
    };

    private static bool IsAroundMarked(Part part, Hazard hazard)
    {
        for (var around = part.Parent; around is not null; around = around.Parent)
        {
            if (around.Has(hazard))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>An energy with its voltage in figures is told of by <see cref="HighVoltageUnmarked"/>, by the figure.</summary>
    private static bool IsToldElsewhere(MachineFacts facts, MachineItem item, Hazard hazard) =>
        hazard == Hazard.HighVoltage && item is Energy energy && ElectricSupply.Of(energy) is var supply && (supply.IsHigh(facts.Settings) || supply.IsLow(facts.Settings));

    private static Finding At(MachineItem item, Hazard hazard, string words) =>
        new(
            Id,
            $"{ItemPhrases.The(item)} has no `hazard {HazardWords.Of(hazard)}`, though its title says \"{words}\"",
            item.Declared,
            "names a hazard")
        {
            Help = $"write `hazard {HazardWords.Of(hazard)}`, for the caution on the cards and the checks that it brings",
            Fixes = [.. HazardEdits.Mark(item, hazard)],
        };
}
