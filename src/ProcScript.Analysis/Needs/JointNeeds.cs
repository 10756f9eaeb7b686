using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>A need of a joint or cover.</summary>
/// <param name="Joint">The joint or cover.</param>
public abstract record JointNeed(Joint Joint) : Need
{
    /// <inheritdoc/>
    public sealed override MachineItem Item => Joint;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Attached, Joint.Index);
}

/// <summary>None of it is attached.</summary>
/// <param name="Joint">The joint.</param>
public sealed record JointOff(Joint Joint) : JointNeed(Joint)
{
    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == 0;

    /// <inheritdoc/>
    internal override int Met => 0;
}

/// <summary>The cover is off the joint that the action is about.</summary>
/// <param name="Joint">The cover.</param>
public sealed record CoverOff(Joint Joint) : JointNeed(Joint)
{
    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == 0;

    /// <inheritdoc/>
    internal override int Met => 0;
}

/// <summary>So many of it are attached, or more.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Least">How many.</param>
public sealed record JointAttached(Joint Joint, int Least) : JointNeed(Joint)
{
    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value >= Least;

    /// <inheritdoc/>
    internal override int Met => Least;
}

/// <summary>So many of it are missing, or more.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Least">How many.</param>
public sealed record JointMissing(Joint Joint, int Least) : JointNeed(Joint)
{
    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value <= Joint.Count - Least;

    /// <inheritdoc/>
    internal override int Met => Joint.Count - Least;
}

/// <summary>All of it are attached.</summary>
/// <param name="Joint">The joint.</param>
public sealed record JointComplete(Joint Joint) : JointNeed(Joint)
{
    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == Joint.Count;

    /// <inheritdoc/>
    internal override int Met => Joint.Count;
}

/// <summary>What is attached of it is tight.</summary>
/// <param name="Joint">The joint.</param>
public sealed record JointTight(Joint Joint) : JointNeed(Joint)
{
    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Slack, Joint.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == 0;

    /// <inheritdoc/>
    internal override int Met => 0;
}

/// <summary>What is attached of it is slack.</summary>
/// <param name="Joint">The joint.</param>
public sealed record JointSlack(Joint Joint) : JointNeed(Joint)
{
    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Slack, Joint.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == 1;

    /// <inheritdoc/>
    internal override int Met => 1;
}
