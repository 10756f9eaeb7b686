using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Following;

/// <summary>A step of a course: a numbered line of the cards, with what it does to the machine.</summary>
public sealed record CourseStep
{
    internal CourseStep(PerformedAction action) => Action = action;

    /// <summary>The number, as on the cards.</summary>
    public required int Number { get; init; }

    /// <summary>Which part of the job it belongs to.</summary>
    public required CoursePhase Phase { get; init; }

    /// <summary>The title of its card.</summary>
    public required string Card { get; init; }

    /// <summary>What the cards say of it.</summary>
    public required PlanStep Line { get; init; }

    /// <summary>The author's own words of a measurement, a task, a check, a record or a pause, whatever language the cards are in; else empty.</summary>
    public required string Words { get; init; }

    /// <summary>What the reading must be; null where none is taken, or it may be anything.</summary>
    public Limit? Expect { get; init; }

    /// <summary>The steps that must go before it.</summary>
    public ImmutableArray<int> Earlier { get; init; } = [];

    /// <summary>How long it is planned to take, and what says so.</summary>
    public required StepDuration Duration { get; init; }

    /// <summary>The action in the text whose block speaks for it; null for what no block does, such as what <c>strip</c> puts in to get there.</summary>
    public StepBlock? Block => StepOrigin.Block(Action.Origin);

    /// <summary>The names of the tools that it takes beside those of its item and its kind.</summary>
    public IEnumerable<string> OwnTools => StepOrigin.Details(Action).Tools.Select(tool => tool.Name);

    /// <summary>What is done.</summary>
    public Verb Verb => Action.Verb;

    /// <summary>What it is done to; null for a measurement, a task, a check, a record or a pause.</summary>
    public MachineItem? Target => Action.Target;

    /// <summary>How many pieces of a joint it takes off or puts on; 0 where it moves none.</summary>
    public int Count => Changes.Any(change => change.Variable.Kind == StateKind.Attached) ? Action.Count : 0;

    /// <summary>What it changes where everything goes as planned.</summary>
    public ImmutableArray<StateChange> Changes => Action.Changes;

    /// <summary>The action.</summary>
    internal PerformedAction Action { get; }
}

/// <summary>The three parts of a course.</summary>
public enum CoursePhase
{
    /// <summary>Taking off.</summary>
    Strip,

    /// <summary>The work between.</summary>
    Work,

    /// <summary>Putting back.</summary>
    Refit,
}
