using ProcScript.Analysis.Energies;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Machines;

/// <summary>
/// Which items a hand touches that works on another: the parts that a joint ties, the energy that is in it, the spring that it holds back.
/// An item can hurt before anybody works on the item itself, so what warns of it stands before the first step that touches it. Only items
/// with alerts or hazard marks count.
/// </summary>
internal sealed class Touching
{
    private readonly ILookup<MachineItem, Touch> _byTarget;

    /// <summary>Works it out from a machine, in time linear in its ties and conditions.</summary>
    public Touching(MachineFacts facts)
    {
        var machine = facts.Machine;
        var byOtherEnd = machine.Joints.Where(joint => joint.Other is not null).ToLookup(joint => joint.Other!);
        var poweredControls = (
            from control in machine.Controls
            from condition in control.Conditions.SelectMany(one => one.Each)
            where condition.State is NeededState.Live or NeededState.Full
            select (condition.Item, Control: control)).ToLookup(one => one.Item, one => one.Control);
        _byTarget = (
            from item in machine.Parts.Concat<MachineItem>(machine.Joints).Concat(machine.Energies).Concat(machine.Fluids).Concat(machine.Controls)
            where !item.Alerts.IsEmpty || !item.Hazards.IsEmpty
            from target in Targets(facts, item, byOtherEnd, poweredControls).Distinct()
            select (target.Item, new Touch(item, target.Position, GraveOnly: item is Energy && target.Item is Joint)
            {
                IsFarEnd = item is Part part && target.Item is Joint joint && IsFarEnd(joint, part),
            }))
            .ToLookup(one => one.Item, one => one.Item2);
    }

    /// <summary>The items that a step on <paramref name="target"/> touches, the target itself first.</summary>
    /// <param name="target">What is worked on.</param>
    /// <param name="position">The position that a control is set to; -1 for other steps.</param>
    public IEnumerable<Touch> By(MachineItem target, int position) => _byTarget[target]
        .Where(touch => touch.Position < 0 || touch.Position == position)
        .OrderBy(touch => touch.Item == target ? 0 : 1);

    private static IEnumerable<(MachineItem Item, int Position)> Targets(
        MachineFacts facts,
        MachineItem item,
        ILookup<Part, Joint> byOtherEnd,
        ILookup<MachineItem, Control> poweredControls)
    {
        IEnumerable<Condition> aside = ((item as Part)?.Aside?.Conditions ?? []).SelectMany(condition => condition.Each);
        IEnumerable<Joint> joints = item switch
        {
            // The joints that its way aside names are ties; those that it asks for beyond that may be any.
            Part part => [.. part.Joints, .. byOtherEnd[part], .. facts.Ties(part), .. aside.Select(condition => condition.Item).OfType<Joint>()],
            Joint joint => [joint],
            Energy energy => facts.JointsOn(energy),
            Fluid fluid => facts.JointsCarrying(fluid),
            _ => [],
        };
        return
        [
            (item, -1),
            .. joints.SelectMany(joint => Covers(joint).Prepend(joint)).Select(joint => ((MachineItem)joint, -1)),

            // What flows or is under pressure acts through a control: where that is set as it asks, and where the control works only with it.
            .. item.Conditions.SelectMany(condition => condition.Each).Where(condition => LetsItOut(item, condition)).Select(condition => (condition.Item, condition.Position)),
            .. poweredControls[item].Where(_ => Flows(item)).Select(control => ((MachineItem)control, -1)),
        ];
    }

    /// <summary>Whether it can come out where a control is set. Electricity stays in its wires, and a part where it is, whatever knob is turned.</summary>
    private static bool Flows(MachineItem item) => item is Fluid || (item is Energy energy && !EnergyWords.IsElectrical(energy));

    /// <summary>Whether a position that an item asks for may let it out: never off, and for a fluid only what opens.</summary>
    private static bool LetsItOut(MachineItem item, Condition condition) =>
        condition is { State: NeededState.Position, Item: Control control }
        && Flows(item)
        && control.Positions[condition.Position] is var position
        && !position.Equals("off", StringComparison.OrdinalIgnoreCase)
        && (item is Energy || position.Contains("open", StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether a lead or a pipe, or what covers its end, only leads to the part.</summary>
    private static bool IsFarEnd(Joint joint, Part part)
    {
        while (joint.Over is { } under)
        {
            joint = under;
        }

        return joint.Role is JointRole.Wired or JointRole.Piped && !joint.Owner.IsWithin(part);
    }

    private static IEnumerable<Joint> Covers(Joint joint) => joint.Covers.SelectMany(cover => Covers(cover).Prepend(cover));
}

/// <summary>An item that is touched.</summary>
/// <param name="Item">The item.</param>
/// <param name="Position">The position of a control that lets it act; -1 for any, and where the target is no control.</param>
/// <param name="GraveOnly">
/// Whether cautions and notices stay behind. At a joint on an energy only what can kill or maim is told; the rest stands where the energy
/// is isolated and where it comes back.
/// </param>
internal readonly record struct Touch(MachineItem Item, int Position, bool GraveOnly)
{
    /// <summary>Whether it is only at the other end of a lead or a pipe: what is hot there burns nobody at this end.</summary>
    public bool IsFarEnd { get; init; }
}
