using System.Collections.Immutable;
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
            select (target.Item, new Touch(item, target.Position, GraveOnly: item is Energy && target.Item is Joint)))
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
        var way = (item as Part)?.Aside;
        ImmutableArray<Condition> aside = [.. (way?.Conditions ?? []).SelectMany(condition => condition.Each)];
        ImmutableArray<Condition> conditions =
            [.. item.Conditions.Concat((item as Part)?.WayOut ?? []).SelectMany(condition => condition.Each), .. aside];
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

            // A control where the item asks for it, and one that works only with it, let it act.
            .. conditions.Where(condition => condition.State == NeededState.Position).Select(condition => (condition.Item, condition.Position)),
            .. poweredControls[item].Select(control => ((MachineItem)control, -1)),
        ];
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
internal readonly record struct Touch(MachineItem Item, int Position, bool GraveOnly);
