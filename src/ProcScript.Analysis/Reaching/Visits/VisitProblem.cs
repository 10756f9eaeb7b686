using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching.Search;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Reaching.Visits;

/// <summary>
/// Which of the steps of several jobs a visit has, as a problem of numbers: the same as for <see cref="ReachGraph"/>, but only what one of the jobs does
/// may be done, and what stays of each is wanted.
/// </summary>
internal sealed class VisitProblem
{
    private readonly ReachGraph _graph;
    private readonly HashSet<FreeingGoal> _done;
    private readonly Dictionary<FreeingGoal, double> _costs;

    /// <summary>Sets the problem.</summary>
    public VisitProblem(MachineFacts facts, ImmutableArray<VisitJob> jobs)
    {
        var steps = jobs.SelectMany(job => job.Stages.SelectMany(stage => stage.Steps)).ToList();
        _done = [.. steps.Select(step => step.Goal).OfType<FreeingGoal>()];
        _costs = _done.ToDictionary(goal => goal, goal => jobs
            .Where(job => job.Stages.Any(stage => stage.Steps.Any(step => step.Goal == goal)))
            .Min(job => job.Costs.Of(goal)));
        var wanted = steps.Where(step => step is { Stays: true, Goal: not null }).Select(step => Ways(step.Goal!.Value)).ToList();
        _graph = ReachGraph.Of(facts, goal => _costs.GetValueOrDefault(goal), [.. wanted.SelectMany(ways => ways).Distinct()], isWritten: true);
        Problem = Restricted(_graph.Problem, wanted).Simplified();
    }

    /// <summary>The problem; null where the jobs by themselves do what the machine, as far as it is searched here, never lets happen.</summary>
    public ClosureProblem? Problem { get; }

    /// <summary>Whether a visit has a step.</summary>
    /// <param name="step">The step.</param>
    /// <param name="closure">What the visit brings about.</param>
    /// <param name="setsControls">Whether controls are set as in the job, also where nothing in the problem asks for it.</param>
    public bool Has(VisitStep step, IReadOnlySet<int> closure, bool setsControls) =>
        step.Goal is not { } goal || (setsControls && goal.Item is Control)
        || (_graph.NodeOf(goal) is >= 0 and var node ? closure.Contains(node) : step.Stays);

    /// <summary>Whether a node is that a control is set.</summary>
    public bool MovesControl(int node) => node < _graph.Problem.Count && _graph[node].Item is Control;

    /// <summary>What it costs at the least to set a control to a position; nothing where no job does.</summary>
    public double CostOfSetting(Control control, int position) =>
        _costs.GetValueOrDefault(new FreeingGoal(FreeingKind.Switched, control) { Position = position });

    /// <summary>What is as good as something that a job does: what is to be loosened or to go aside may as well be off.</summary>
    private ImmutableArray<FreeingGoal> Ways(FreeingGoal goal)
    {
        ImmutableArray<FreeingGoal> ways = goal.Kind switch
        {
            FreeingKind.Slack => [goal, goal with { Kind = FreeingKind.Off }],
            FreeingKind.Aside or FreeingKind.Propped => [goal, goal with { Kind = FreeingKind.Out }],
            FreeingKind.Proved => [goal, goal with { Kind = FreeingKind.ProvedAtOnce }],
            FreeingKind.ProvedAtOnce => [goal, goal with { Kind = FreeingKind.Proved }],
            FreeingKind.Switched => [goal, goal with { Kind = FreeingKind.ProvedAtOnce }],
            _ => [goal],
        };
        return ways.RemoveAll(way => way != goal && !_done.Contains(way));
    }

    /// <summary>The problem without what no job does, and with a node of its own for what is wanted in one way or another.</summary>
    private ClosureProblem Restricted(ClosureProblem problem, List<ImmutableArray<FreeingGoal>> wanted)
    {
        bool IsDone(int node) => _done.Contains(_graph[node]);
        var clauses = problem.Clauses.Select((all, node) => IsDone(node) ? [.. all.Select(clause => clause.Where(IsDone).ToArray())] : (int[][])[[]]).ToList();
        var along = problem.Along.Select(all => all.Where(other => IsDone(other) && _graph[other].Kind == FreeingKind.Proved).ToArray()).ToList();
        var goals = new HashSet<int>();
        foreach (var ways in wanted)
        {
            if (ways is [var only])
            {
                goals.Add(_graph.NodeOf(only));
                continue;
            }

            goals.Add(clauses.Count);
            clauses.Add([[.. ways.Select(_graph.NodeOf)]]);
            along.Add([]);
        }

        return new ClosureProblem([.. problem.Costs, .. new double[clauses.Count - problem.Count]], [.. clauses], [.. along], [.. goals]);
    }
}
