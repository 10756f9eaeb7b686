using ProcScript.Analysis.Machines;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>A plug of a restraint system is opened and closed whatever is live. Common practice, no source.</summary>
public sealed class RestraintOnNoEnergy : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5043", "restraint-on-no-energy", "A plug of a restraint system is on no energy", Severity.Warning)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint with the mark `hazard restraint`, or a connector of a part with it, is `on` no energy, and no condition asks for one "
            + "to be isolated.",
        Why: "Then nothing keeps a procedure from unplugging it with the supply on, or from switching the supply on with the plug still "
            + "open: either can fire it. It is a warning because a purely mechanical restraint has no supply; allow it there, and say so.",
        Wrong: """
            connector squib "squib connector" { hazard restraint }

            machine cab "Cab" {
              energy battery "12 V battery" {
                isolate "Take the negative cable off."
                wait    10 min
                verify  "The dome lamp stays dark."
                restore "Refit the cable."
              }
              part loom "loom"
              part airbag "driver airbag" { wired by 1 squib as airbag_plug { to loom } }
            }
            """,
        Right: """
            connector squib "squib connector" { hazard restraint }

            machine cab "Cab" {
              energy battery "12 V battery" {
                isolate "Take the negative cable off."
                wait    10 min
                verify  "The dome lamp stays dark."
                restore "Refit the cable."
              }
              part loom "loom"
              part airbag "driver airbag" { wired by 1 squib as airbag_plug { to loom  on battery } }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from joint in facts.Machine.Joints
        where joint.On is null && IsPlugOfRestraint(joint) && !NeedsIsolation(joint)
        select new Finding(Id, $"`{joint.Name}` can fire a restraint, and no energy has to be isolated for it", joint.Declared, "is `on` no energy")
        {
            Related = Mark(joint) is { } part ? [new LabeledSpan(part.Declared, "belongs to a restraint system")] : [],
            Help = "write `on` and the energy that can fire it",
            Fixes = facts.Machine.Energies is [var only] ? [On(joint, only)] : [],
        };

    private static bool IsPlugOfRestraint(Joint joint) =>
        joint.Role != JointRole.Cover && (joint.Has(Hazard.Restraint) || (joint.Role == JointRole.Wired && HazardMarks.IsOfRestraint(joint)));

    private static Part? Mark(Joint joint) => joint.Owner.Has(Hazard.Restraint) ? joint.Owner : null;

    /// <summary>A condition asks for the same, of the joint itself or of a part around it.</summary>
    private static bool NeedsIsolation(Joint joint)
    {
        for (var part = joint.Owner; part is not null; part = part.Parent)
        {
            if (part.Conditions.Any(condition => condition.State == NeededState.Isolated))
            {
                return true;
            }
        }

        return joint.Conditions.Any(condition => condition.State == NeededState.Isolated);
    }

    private static Fix On(Joint joint, Energy energy) => new(
        $"Insert `on {energy.Name}`",
        FixGrade.NeedsLook,
        [new TextEdit(new SourceSpan(joint.Declared.Path, new TextSpan(joint.Declared.Span.End, 0)), $" on {energy.Name}")]);
}
