using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Reading;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Runs;

/// <summary>What came of performing the stages and the work of a procedure.</summary>
public sealed class StripRun
{
    internal StripRun(MachineFacts facts, SeenLibrary library) => (Facts, Library) = (facts, library);

    /// <summary>The library as the check of the procedure sees it.</summary>
    internal SeenLibrary Library { get; }

    /// <summary>The procedure.</summary>
    public required Procedure Procedure { get; init; }

    /// <summary>Every action of stages and work, in order; an action's number is its index.</summary>
    public required ImmutableArray<PerformedAction> Actions { get; init; }

    /// <summary>The same actions stage by stage.</summary>
    public required ImmutableArray<StageRun> Stages { get; init; }

    /// <summary>The actions of the work.</summary>
    public required ImmutableArray<PerformedAction> Work { get; init; }

    /// <summary>What must go before what: any order that keeps this can be worked.</summary>
    public required ImmutableArray<OrderEdge> Order { get; init; }

    /// <summary>The steps that were left out because they were done already, in order.</summary>
    public ImmutableArray<SkippedStep> Skipped { get; init; } = [];

    /// <summary>What does not go back.</summary>
    public required ImmutableArray<Discard> Discards { get; init; }

    /// <summary>What cannot be done as written.</summary>
    public required ImmutableArray<StripFailure> Failures { get; init; }

    /// <summary>The goals that no action meets.</summary>
    public ImmutableArray<Goal> MissedGoals { get; init; } = [];

    /// <summary>
    /// Whether every action could be performed. Without a failure this is false only where the machine itself is to blame, which a
    /// finding there says.
    /// </summary>
    public required bool IsSound { get; init; }

    /// <summary>The machine before the first action.</summary>
    public required MachineState Start { get; init; }

    /// <summary>The machine after the last action.</summary>
    public required MachineState End { get; init; }

    /// <summary>Which items do not go back, those that a discarded part takes along among them.</summary>
    public required IReadOnlySet<MachineItem> Discarded { get; init; }

    /// <summary>Which items go back as new ones.</summary>
    public required IReadOnlySet<MachineItem> Replaced { get; init; }

    /// <summary>How many pieces go back as new ones, of joints that are not among <see cref="Replaced"/>.</summary>
    public required IReadOnlyDictionary<Joint, int> Renewed { get; init; }

    /// <summary>Of so many actions from one on the pairs of which one must go before the other, as places from the first.</summary>
    internal List<(int Earlier, int Later)> OrderWithin(int first, int count)
    {
        var pairs = new List<(int Earlier, int Later)>();
        // Edges stand in the order of their later ends.
        foreach (var edge in Order.AsSpan()[EdgesBefore(first)..EdgesBefore(first + count)])
        {
            if (edge.Earlier >= first)
            {
                pairs.Add((edge.Earlier - first, edge.Later - first));
            }
        }

        return pairs;
    }

    private int EdgesBefore(int later)
    {
        var (low, high) = (0, Order.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Order[middle].Later < later ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>For each variable that changed the action that changed it last.</summary>
    internal IReadOnlyDictionary<StateVariable, PerformedAction> LastChanges()
    {
        var last = new Dictionary<StateVariable, PerformedAction>(Actions.Length);
        foreach (var action in Actions)
        {
            foreach (var change in action.Changes)
            {
                last[change.Variable] = action;
            }
        }

        return last;
    }

    /// <summary>The number of the first action that a step stands for; -1 where none was performed.</summary>
    internal int FirstActionOf(Step step) =>
        Actions.FirstOrDefault(action => ReferenceEquals(RefitFinding.Step(action), step))?.Number ?? -1;

    /// <summary>The number of the last action that a step stands for; -1 where none was performed.</summary>
    internal int LastActionOf(Step step) =>
        Actions.LastOrDefault(action => ReferenceEquals(RefitFinding.Step(action), step))?.Number ?? -1;

    /// <summary>What follows from the machine alone.</summary>
    internal MachineFacts Facts { get; }

    /// <summary>The numbers given so far, for the refit to go on from.</summary>
    internal RunNumbering Numbering { get; init; } = new(0, 0);
}
