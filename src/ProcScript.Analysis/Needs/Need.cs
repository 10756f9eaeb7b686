using System.Collections.Immutable;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>Something that must be true of one variable of the machine's state for an action to be possible.</summary>
public abstract record Need
{
    private protected Need()
    {
    }

    /// <summary>The item it is about.</summary>
    public abstract MachineItem Item { get; }

    /// <summary>The variable it reads.</summary>
    public abstract StateVariable Variable { get; }

    /// <summary>The condition in the machine that asks for it; null where the action itself does.</summary>
    public Condition? Declared { get; init; }

    /// <summary>Whether the need is met while its variable has this value.</summary>
    public abstract bool IsMetBy(int value);

    /// <summary>A value that meets it: what is assumed when a run goes on after a need that was not met.</summary>
    internal abstract int Met { get; }
}

/// <summary>
/// Any one of several needs, of which none is met in the state at hand: a choice with an open way asks for that way alone. By itself it stands for
/// its first way.
/// </summary>
/// <param name="Ways">The needs, in the author's order.</param>
public sealed record AnyOf(ImmutableArray<Need> Ways) : Need
{
    /// <summary>The way that takes least time where the need is not met; null where nothing opens one, or nobody has looked.</summary>
    public Need? Quickest { get; init; }

    /// <inheritdoc/>
    public override MachineItem Item => Ways[0].Item;

    /// <inheritdoc/>
    public override StateVariable Variable => Ways[0].Variable;

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => Ways[0].IsMetBy(value);

    /// <inheritdoc/>
    internal override int Met => Ways[0].Met;
}
