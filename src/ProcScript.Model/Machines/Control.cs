using System.Collections.Immutable;

namespace ProcScript.Model.Machines;

/// <summary>A control with positions.</summary>
public sealed class Control : MachineItem
{
    /// <summary>The positions; the first is home.</summary>
    public required ImmutableArray<string> Positions { get; init; }

    /// <summary>The same as people call them.</summary>
    public required ImmutableArray<string> PositionTitles { get; init; }
}
