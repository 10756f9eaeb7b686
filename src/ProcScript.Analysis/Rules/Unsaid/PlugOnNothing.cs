using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A connector of which nobody has said what it is on. Common practice, no source.</summary>
public sealed class PlugOnNothing : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8001", "plug-on-nothing", "A connector that is on no energy, and not said to be", Severity.Warning)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `wired by` without `on`, on a machine with an electrical energy, for which no condition asks for an energy to be isolated.",
        Why: "With the `on` left out, the proof lets somebody unplug it live. Where it truly is on none, as an aerial is, write `on none`, "
            + "at the joint or once at the kind.",
        Wrong: """
            connector plug_2 "2-way connector"

            machine lamp "Work lamp" {
              energy battery "12 V battery" { isolate "Take the negative cable off."  verify "The lamp stays dark."  restore "Fit the cable." }
              part head "lamp head" { wired by 1 plug_2 as head_plug }
            }
            """,
        Right: """
            connector plug_2 "2-way connector"

            machine lamp "Work lamp" {
              energy battery "12 V battery" { isolate "Take the negative cable off."  verify "The lamp stays dark."  restore "Fit the cable." }
              part head "lamp head" { wired by 1 plug_2 as head_plug on battery }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts)
    {
        List<Energy> electrical = [.. facts.Machine.Energies.Where(energy => EnergyWords.IsElectrical(energy) || energy.Has(Hazard.HighVoltage))];
        return
            from joint in electrical.Count == 0 ? [] : facts.Machine.Joints
            where joint is { Role: JointRole.Wired, On: null, IsOnNone: false }
                && !HazardMarks.IsOfRestraint(joint)
                && !joint.AskFor(NeededState.Isolated)
            select new Finding(Id, $"nothing says what `{joint.Name}` is on: {ItemPhrases.Pieces(joint, joint.Count)}", joint.Declared, "has no `on`")
            {
                Related = [.. electrical.Take(1).Select(energy => new LabeledSpan(energy.Declared, "the machine has this energy"))],
                Help = "write `on` and the energy that must be isolated for it, or `on none`",
                Fixes = [.. JointEdits.Answers(joint, "on", electrical)],
            };
    }
}
