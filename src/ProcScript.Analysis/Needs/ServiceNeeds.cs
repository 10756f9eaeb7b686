using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>An energy is live.</summary>
/// <param name="Energy">The energy.</param>
public sealed record EnergyLive(Energy Energy) : Need
{
    /// <inheritdoc/>
    public override MachineItem Item => Energy;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Live, Energy.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == 1;

    /// <inheritdoc/>
    internal override int Met => 1;
}

/// <summary>An energy is isolated, whether or not that is proved.</summary>
/// <param name="Energy">The energy.</param>
public sealed record EnergyIsolated(Energy Energy) : Need
{
    /// <inheritdoc/>
    public override MachineItem Item => Energy;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Live, Energy.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value != (int)EnergyState.Live;

    /// <inheritdoc/>
    internal override int Met => (int)EnergyState.Dead;
}

/// <summary>An energy is isolated and proved to be off.</summary>
/// <param name="Energy">The energy.</param>
public sealed record EnergyProvedDead(Energy Energy) : Need
{
    /// <inheritdoc/>
    public override MachineItem Item => Energy;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Live, Energy.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == (int)EnergyState.Dead;

    /// <inheritdoc/>
    internal override int Met => (int)EnergyState.Dead;
}

/// <summary>A fluid is in.</summary>
/// <param name="Fluid">The fluid.</param>
public sealed record FluidFull(Fluid Fluid) : Need
{
    /// <inheritdoc/>
    public override MachineItem Item => Fluid;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Full, Fluid.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == 1;

    /// <inheritdoc/>
    internal override int Met => 1;
}

/// <summary>A fluid is out.</summary>
/// <param name="Fluid">The fluid.</param>
public sealed record FluidEmpty(Fluid Fluid) : Need
{
    /// <inheritdoc/>
    public override MachineItem Item => Fluid;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Full, Fluid.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == 0;

    /// <inheritdoc/>
    internal override int Met => 0;
}

/// <summary>A control is at a position.</summary>
/// <param name="Control">The control.</param>
/// <param name="Position">The index of the position.</param>
public sealed record ControlAt(Control Control, int Position) : Need
{
    /// <inheritdoc/>
    public override MachineItem Item => Control;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Position, Control.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value == Position;

    /// <inheritdoc/>
    internal override int Met => Position;
}

/// <summary>A control is somewhere else, so that setting it does something.</summary>
/// <param name="Control">The control.</param>
/// <param name="Position">The index of the position it must not be at.</param>
public sealed record ControlElsewhere(Control Control, int Position) : Need
{
    /// <inheritdoc/>
    public override MachineItem Item => Control;

    /// <inheritdoc/>
    public override StateVariable Variable => new(StateKind.Position, Control.Index);

    /// <inheritdoc/>
    public override bool IsMetBy(int value) => value != Position;

    /// <inheritdoc/>
    internal override int Met => Position == 0 ? 1 : 0;
}
