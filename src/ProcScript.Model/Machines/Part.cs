using System.Collections.Immutable;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Machines;

/// <summary>A part of a machine.</summary>
public sealed class Part : MachineItem
{
    /// <summary>The part it travels with; null for a part right in the machine.</summary>
    public Part? Parent { get; init; }

    /// <summary>The parts declared right inside it.</summary>
    public ImmutableArray<Part> Children { get; internal set; } = [];

    /// <summary>The joints and covers declared right inside it; covers after the joint they cover.</summary>
    public ImmutableArray<Joint> Joints { get; internal set; } = [];

    /// <summary>Its own mass, without the parts inside it that have one of their own.</summary>
    public Quantity? Mass { get; internal set; }

    /// <summary>Why nobody knows its mass; null where that is not said.</summary>
    public string? MassUnknown { get; internal set; }

    /// <summary>Whether it must not go back once it is off.</summary>
    public bool SingleUse { get; internal set; }

    /// <summary>How it is lifted.</summary>
    public LiftGeometry Lift { get; internal set; } = LiftGeometry.None;

    /// <summary>Whether a hoist lifts it.</summary>
    public bool Hoist { get; internal set; }

    /// <summary>The parts and joints that disturb it: once one of them comes off, this must be renewed.</summary>
    public ImmutableArray<MachineItem> RenewWith { get; internal set; } = [];

    /// <summary>Whether it is said that nothing disturbs it.</summary>
    public bool RenewsWithNone { get; internal set; }

    /// <summary>How it goes out of the way without coming off; null where it cannot.</summary>
    public AsideWay? Aside { get; internal set; }

    /// <summary>What binds its own way out and back, and nothing that lies in it: <c>way behind a</c>.</summary>
    public ImmutableArray<Condition> WayOut { get; internal set; } = [];

    /// <summary>Whether this part is <paramref name="other"/> or lies somewhere inside it.</summary>
    public bool IsWithin(Part other)
    {
        for (var part = this; part is not null; part = part.Parent)
        {
            if (part == other)
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>How a part goes out of the way without coming off.</summary>
/// <param name="How">In words, or null.</param>
/// <param name="Joints">The joints that must be off or slack.</param>
/// <param name="Conditions">Further conditions.</param>
/// <param name="Declared">Where it is written.</param>
public sealed record AsideWay(string? How, ImmutableArray<Joint> Joints, ImmutableArray<Condition> Conditions, SourceSpan Declared);
