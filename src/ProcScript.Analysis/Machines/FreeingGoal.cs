using System.Collections.Immutable;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Machines;

/// <summary>Something that can be brought about with an item while a machine comes apart.</summary>
/// <param name="Kind">What.</param>
/// <param name="Item">The item.</param>
internal readonly record struct FreeingGoal(FreeingKind Kind, MachineItem Item)
{
    /// <summary>The position that a control is set to, where goals tell positions apart; else 0.</summary>
    public int Position { get; init; }
}

/// <summary>What can be brought about with an item while a machine comes apart.</summary>
internal enum FreeingKind
{
    /// <summary>A joint or cover comes off.</summary>
    Off,

    /// <summary>A joint of fasteners is loosened.</summary>
    Slack,

    /// <summary>A part comes out.</summary>
    Out,

    /// <summary>A part goes aside.</summary>
    Aside,

    /// <summary>A temporary part is fitted, and what holds it closed.</summary>
    Fitted,

    /// <summary>An energy is isolated, a fluid emptied or a control moved.</summary>
    Switched,

    /// <summary>A part is propped.</summary>
    Propped,

    /// <summary>An energy that is isolated already is proved to be off.</summary>
    Proved,

    /// <summary>An energy is isolated by a step that ends with the proof.</summary>
    ProvedAtOnce,

    /// <summary>A hand gets at a part or a joint.</summary>
    Reached,

    /// <summary>A part or a joint that is off is replaced.</summary>
    Renewed,
}

/// <summary>One thing that a goal needs.</summary>
/// <param name="About">The item that has to give way.</param>
/// <param name="Condition">The condition that asks for it; null where the goal itself does.</param>
/// <param name="Ways">The goals of which any one will do; none where nothing will.</param>
internal sealed record FreeingClause(MachineItem About, Condition? Condition, ImmutableArray<FreeingGoal> Ways);
