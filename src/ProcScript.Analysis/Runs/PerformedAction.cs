using System.Collections.Immutable;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Runs;

/// <summary>One action of a run, as it was performed.</summary>
public sealed record PerformedAction
{
    /// <summary>Its number: from 0 through the stages and the work, and on through the refit.</summary>
    public required int Number { get; init; }

    /// <summary>What was done; never <see cref="Verb.Strip"/>, which stands for the actions it expands to.</summary>
    public required Verb Verb { get; init; }

    /// <summary>What it was done to; null for a measurement, a task, a check, a record or a pause.</summary>
    public MachineItem? Target { get; init; }

    /// <summary>How many pieces came off or went on; 0 where the target is not counted.</summary>
    public int Count { get; init; }

    /// <summary>The position of the control before; -1 where the target is none.</summary>
    public int PositionBefore { get; init; } = -1;

    /// <summary>The position of the control after; -1 where the target is none.</summary>
    public int PositionAfter { get; init; } = -1;

    /// <summary>Where it comes from.</summary>
    public required ActionOrigin Origin { get; init; }

    /// <summary>Whether other work goes on meanwhile.</summary>
    public bool InBackground { get; init; }

    /// <summary>What had to be true, and what had made it so.</summary>
    public ImmutableArray<MetNeed> Needs { get; init; } = [];

    /// <summary>What it changed.</summary>
    public ImmutableArray<StateChange> Changes { get; init; } = [];

    /// <summary>How long what it puts in place cures before it may be loaded; null where nothing does.</summary>
    public Quantity? Cure { get; init; }

    /// <summary>The numbers of the background and curing actions that must have ended before it starts, in order.</summary>
    public ImmutableArray<int> WaitsFor { get; init; } = [];

    /// <summary>Whether no author wrote it or its inverse.</summary>
    public bool IsDerived => Origin switch
    {
        ExpandedStep or InsertedSet or InsertedCap or PropAgain => true,
        InverseOf inverse => inverse.Action.IsDerived,
        _ => false,
    };
}
