using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>
/// What a hand touches, written down a second time: one question, asked of every action and every item anew, and no table that is made once.
/// </summary>
internal static class NaiveHand
{
    /// <summary>Whether an action touches an item itself or what frees it; at a joint on an energy only what can kill or maim counts.</summary>
    public static bool Touches(PerformedAction action, MachineItem item, bool grave)
    {
        if (action.Target is not { } target)
        {
            return false;
        }

        return target == item || (target, item) switch
        {
            (Control control, Energy or Fluid) => Asks(item, control, action.PositionAfter) || Needs(control, item),
            (Joint joint, Energy energy) => grave && Under(joint).Any(under => under.On == energy),
            (Joint joint, Fluid fluid) => Under(joint).Any(under => under.Carries == fluid),
            (Joint joint, Joint other) => Under(joint).Contains(other),
            (Joint joint, Part part) => Under(joint).Any(under => Holds(under, part)),
            _ => false,
        };
    }

    /// <summary>A joint, and what it covers, down to the one that ties.</summary>
    private static IEnumerable<Joint> Under(Joint joint)
    {
        for (Joint? at = joint; at is not null; at = at.Over)
        {
            yield return at;
        }
    }

    private static bool Holds(Joint joint, Part part) =>
        joint.Owner == part
        || joint.Other == part
        || (joint.Role != JointRole.Cover && joint.Owner.IsWithin(part) != (joint.Other?.IsWithin(part) ?? false))
        || part.Aside?.Joints.Contains(joint) == true
        || part.Aside?.Conditions.SelectMany(condition => condition.Each).Any(condition => condition.Item == joint) == true;

    /// <summary>Whether an action is only at the end of a lead or a pipe that leads to a part.</summary>
    public static bool IsFarFrom(PerformedAction action, MachineItem item) =>
        action.Target is Joint joint && item is Part part && Under(joint).Last() is { Role: JointRole.Wired or JointRole.Piped } end && !end.Owner.IsWithin(part);

    /// <summary>The energies here are no electricity, no position is off, and none opens anything.</summary>
    private static bool Asks(MachineItem item, Control control, int position) =>
        item is Energy && item.Conditions.SelectMany(condition => condition.Each).Any(condition => condition.Item == control && condition.Position == position);

    private static bool Needs(Control control, MachineItem item) =>
        control.Conditions.SelectMany(condition => condition.Each).Any(condition => condition.Item == item && condition.State is NeededState.Live or NeededState.Full);
}
