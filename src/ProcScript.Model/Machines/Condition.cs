using System.Collections.Immutable;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Machines;

/// <summary>Something that must be true to get at an item.</summary>
/// <param name="Item">What it is about; of a choice, what its first way is about.</param>
/// <param name="State">What must be true of it.</param>
/// <param name="Position">The index of the position, for <see cref="NeededState.Position"/>.</param>
/// <param name="Phase">When it binds.</param>
/// <param name="Declared">Where it is written.</param>
public sealed record Condition(MachineItem Item, NeededState State, int Position, NeedsPhase Phase, SourceSpan Declared)
{
    /// <summary>Of a choice (<c>a out or b out</c>) the conditions of which any one will do, in the author's order; else none.</summary>
    public ImmutableArray<Condition> Ways { get; init; } = [];

    /// <summary>The item in whose text it stands; null where a step, a check or the proof of an energy has it.</summary>
    public MachineItem? Owner { get; init; }

    /// <summary>The ways of a choice; any other condition alone.</summary>
    public ImmutableArray<Condition> Each => Ways.IsEmpty ? [this] : Ways;
}

/// <summary>What a condition asks of its item.</summary>
public enum NeededState
{
    /// <summary>A part out or aside: <c>behind</c>.</summary>
    OutOfTheWay,

    /// <summary>A part out.</summary>
    Out,

    /// <summary>A part fitted.</summary>
    Fitted,

    /// <summary>A part aside.</summary>
    Aside,

    /// <summary>A part propped.</summary>
    Supported,

    /// <summary>A joint or cover with none attached.</summary>
    Off,

    /// <summary>A joint off or slack.</summary>
    Slack,

    /// <summary>An energy live.</summary>
    Live,

    /// <summary>An energy isolated.</summary>
    Isolated,

    /// <summary>A fluid in.</summary>
    Full,

    /// <summary>A fluid out.</summary>
    Empty,

    /// <summary>A control at a position.</summary>
    Position,

    /// <summary>Any one of several conditions: a choice.</summary>
    AnyOf,
}
