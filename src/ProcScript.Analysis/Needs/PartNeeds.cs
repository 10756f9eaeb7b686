using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>A need of a part.</summary>
/// <param name="Part">The part.</param>
public abstract record PartNeed(Part Part) : Need
{
    /// <inheritdoc/>
    public sealed override MachineItem Item => Part;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Place, Part.Index);

    /// <inheritdoc/>
    public sealed override bool IsMetBy(int value) => IsMetBy((PartPlace)value);

    private protected abstract bool IsMetBy(PartPlace place);
}

/// <summary>The part is out or aside.</summary>
/// <param name="Part">The part.</param>
public sealed record PartOutOfTheWay(Part Part) : PartNeed(Part)
{
    private protected override bool IsMetBy(PartPlace place) => place != PartPlace.Fitted;

    /// <inheritdoc/>
    internal override int Met => (int)PartPlace.Aside;
}

/// <summary>The part is out.</summary>
/// <param name="Part">The part.</param>
public sealed record PartOut(Part Part) : PartNeed(Part)
{
    private protected override bool IsMetBy(PartPlace place) => place == PartPlace.Out;

    /// <inheritdoc/>
    internal override int Met => (int)PartPlace.Out;
}

/// <summary>A temporary part is not on what goes away or is replaced.</summary>
/// <param name="Part">The part.</param>
public sealed record TemporaryOff(Part Part) : PartNeed(Part)
{
    private protected override bool IsMetBy(PartPlace place) => place == PartPlace.Out;

    /// <inheritdoc/>
    internal override int Met => (int)PartPlace.Out;
}

/// <summary>The part is off and what the action is about lies inside it, where nothing outside is in the way.</summary>
/// <param name="Part">The part.</param>
public sealed record PartOnBench(Part Part) : PartNeed(Part)
{
    private protected override bool IsMetBy(PartPlace place) => place == PartPlace.Out;

    /// <inheritdoc/>
    internal override int Met => (int)PartPlace.Out;
}

/// <summary>The part is not off.</summary>
/// <param name="Part">The part.</param>
public sealed record PartInPlace(Part Part) : PartNeed(Part)
{
    private protected override bool IsMetBy(PartPlace place) => place != PartPlace.Out;

    /// <inheritdoc/>
    internal override int Met => (int)PartPlace.Fitted;
}

/// <summary>The part is where it belongs.</summary>
/// <param name="Part">The part.</param>
public sealed record PartFitted(Part Part) : PartNeed(Part)
{
    private protected override bool IsMetBy(PartPlace place) => place == PartPlace.Fitted;

    /// <inheritdoc/>
    internal override int Met => (int)PartPlace.Fitted;
}

/// <summary>The part is aside.</summary>
/// <param name="Part">The part.</param>
public sealed record PartAside(Part Part) : PartNeed(Part)
{
    private protected override bool IsMetBy(PartPlace place) => place == PartPlace.Aside;

    /// <inheritdoc/>
    internal override int Met => (int)PartPlace.Aside;
}

/// <summary>The part is propped, or is not.</summary>
/// <param name="Part">The part.</param>
/// <param name="IsPropped">Which.</param>
public sealed record PartPropped(Part Part, bool IsPropped) : Need
{
    /// <inheritdoc/>
    public override MachineItem Item => Part;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Propped, Part.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == (IsPropped ? 1 : 0);

    /// <inheritdoc/>
    internal override int Met => IsPropped ? 1 : 0;
}
