using ProcScript.Analysis.Actions;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>Of so many of a joint at the least the openings are capped.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Least">How many.</param>
public sealed record JointCapped(Joint Joint, int Least) : JointNeed(Joint)
{
    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Capped, Joint.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value >= Least;

    /// <inheritdoc/>
    internal override int Met => Least;
}

/// <summary>Of so many of a joint at the most the openings are capped.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Most">How many.</param>
public sealed record JointUncapped(Joint Joint, int Most) : JointNeed(Joint)
{
    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Capped, Joint.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value <= Most;

    /// <inheritdoc/>
    internal override int Met => Most;
}

/// <summary>The hole that a part leaves is capped, or is not.</summary>
/// <param name="Part">The part.</param>
/// <param name="IsPlugged">Which.</param>
public sealed record HolePlugged(Part Part, bool IsPlugged) : Need
{
    /// <inheritdoc/>
    public override MachineItem Item => Part;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Plugged, Part.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == (IsPlugged ? 1 : 0);

    /// <inheritdoc/>
    internal override int Met => IsPlugged ? 1 : 0;
}

/// <summary>What the rows of the action table ask of openings and their caps.</summary>
internal static class CapNeeds
{
    /// <summary>There is an opening to cap: so many pieces are off beside those that are capped; the part is out, its hole bare.</summary>
    public static void Open(ActionRequest request, NeedCollector collector)
    {
        if (request.Target is Joint joint)
        {
            collector.Add(new JointMissing(joint, collector.State[new StateVariable(StateKind.Capped, joint.Index)] + request.Value));
        }
        else
        {
            collector.Add(new PartOut(request.Part));
            collector.Add(new HolePlugged(request.Part, false));
        }
    }

    /// <summary>There are caps to take off.</summary>
    public static void Capped(ActionRequest request, NeedCollector collector) =>
        collector.Add(request.Target is Joint joint ? new JointCapped(joint, request.Value) : new HolePlugged(request.Part, true));

    /// <summary>Nothing is closed over a cap: of as many pieces as are put on the openings are bare, and the hole of the part is.</summary>
    public static void Uncapped(ActionRequest request, NeedCollector collector)
    {
        switch (request.Target)
        {
            case Joint { Cap: not null } joint:
                collector.Add(new JointUncapped(joint, Math.Max(0, joint.Count - collector.State.Attached(joint) - Math.Max(1, request.Value))));
                break;
            case Part { Cap: not null } part:
                collector.Add(new HolePlugged(part, false));
                break;
        }
    }
}
