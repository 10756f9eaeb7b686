using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching.Search;
using ProcScript.Model;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Reaching;

/// <summary>Finds the cheapest way to what a job asks for, and the next best that do without something which that one does.</summary>
internal sealed class ReachSearch
{
    private readonly Library _library;
    private readonly ReachJob _job;
    private readonly ReachCosts _costs;
    private readonly Dictionary<string, JudgedClosure?> _judged = new(StringComparer.Ordinal);
    private readonly long _budget;
    private ReachWay? _cheapest;

    private ReachSearch(Library library, ReachJob job, ReachWeights weights, long budget)
    {
        (_library, _job, _budget) = (library, job, budget);
        _costs = job.Costs(weights);
        Graph = ReachGraph.Of(job.Facts, _costs.Of, job.Goals);
        Problem = Graph.Problem.Simplified();
    }

    /// <summary>What the numbers stand for.</summary>
    public ReachGraph Graph { get; }

    /// <summary>The problem; null where something that is asked for can never be had.</summary>
    public ClosureProblem? Problem { get; }

    /// <summary>The cheapest way; null where none was found.</summary>
    public ReachWay? Best { get; private set; }

    /// <summary>What any way costs at the least.</summary>
    public double Bound { get; private set; }

    /// <summary>How many choices were looked at.</summary>
    public int Looked { get; private set; }

    /// <summary>The next best ways, the cheapest first.</summary>
    public ImmutableArray<ReachWay> RunnersUp { get; private set; } = [];

    /// <summary>What things cost.</summary>
    public ReachCosts Costs => _costs;

    /// <summary>Searches.</summary>
    /// <param name="library">The library.</param>
    /// <param name="job">What is asked for.</param>
    /// <param name="weights">What counts.</param>
    /// <param name="budget">How many clauses may be looked at for the best way; each of the next best gets a thousandth.</param>
    /// <param name="runnersUp">How many of the next best are wanted.</param>
    public static ReachSearch Of(Library library, ReachJob job, ReachWeights weights, long budget, int runnersUp)
    {
        var search = new ReachSearch(library, job, weights, budget);
        if (search.Problem is { } problem)
        {
            search.FindBest(problem);
            search.FindNext(problem, runnersUp);
        }

        return search;
    }

    private void FindBest(ClosureProblem problem)
    {
        var result = Solve(problem, [], _budget);
        Best = result.Closure is { } closure ? Way(closure) : null;
        (Bound, Looked) = (result.Bound, result.Looked);
    }

    /// <summary>Does without each thing in turn that had a choice, and keeps what is cheapest then.</summary>
    private void FindNext(ClosureProblem problem, int wanted)
    {
        if (Best is not { } best || wanted == 0)
        {
            return;
        }

        var nodes = best.Nodes.ToHashSet();
        var chosen = best.Nodes
            .SelectMany(node => problem.Clauses[node])
            .Where(clause => clause.Length > 1)
            .SelectMany(clause => clause)
            .Where(node => nodes.Contains(node) && Graph[node].Kind is not (FreeingKind.Slack or FreeingKind.Proved or FreeingKind.ProvedAtOnce))
            .Distinct()
            .ToList();
        var found = new List<ReachWay>();
        foreach (var node in chosen.Take(Math.Clamp(MostPerformed / best.Nodes.Length, 1, MostTried)))
        {
            if (Solve(problem, [node], _budget / NextPrice) is { Closure: { } closure } && Way(closure) is { } way
                && found.TrueForAll(other => !other.Nodes.SequenceEqual(way.Nodes)))
            {
                found.Add(way);
            }
        }

        RunnersUp = [.. found.OrderBy(way => way.Cost).Take(wanted)];
    }

    /// <summary>Without how many things it is tried, and how many actions are performed for it: on a large machine each way takes its time.</summary>
    private const int MostTried = 12;

    private const int MostPerformed = 5_000;

    /// <summary>How much less is searched for each of them: they tell what else there is, and only of the best it is said how far it is proved.</summary>
    private const int NextPrice = 1000;

    private ClosureResult Solve(ClosureProblem problem, IEnumerable<int> without, long budget)
    {
        _cheapest = null;
        return ClosureSearch.Solve(problem, without, Cost, budget);
    }

    /// <summary>What a closure costs once it is performed. Of the ways themselves only the cheapest is kept: of a large machine each is large.</summary>
    private JudgedClosure? Cost(int[] closure)
    {
        var key = string.Join(' ', closure);
        if (_judged.TryGetValue(key, out var known))
        {
            return known;
        }

        if (Perform(closure) is not { } way)
        {
            return _judged[key] = null;
        }

        _cheapest = way.Cost < _cheapest?.Cost || _cheapest is null ? way : _cheapest;
        return _judged[key] = new JudgedClosure(way.Cost, Math.Min(way.Cost, Least(closure, way)));
    }

    /// <summary>What a closure costs at the least in another order: energies and fluids go first here, though a control may have to be moved for that.</summary>
    private double Least(int[] closure, ReachWay way)
    {
        var sum = closure.Sum(node => Problem!.Costs[node]) + way.PropAgain;
        if (way.Cost <= sum + Rounding)
        {
            return sum;
        }

        var controls = closure.Where(node => Graph[node] is { Kind: FreeingKind.Switched, Item: Control }).ToList();
        var moved = controls.Sum(node => Problem!.Costs[node]);
        var actions = closure.Except(controls).SelectMany(node => ReachOrder.Actions(Graph, _costs, node)).ToImmutableArray();
        var fewest = ControlMoves.Fewest(_job.Facts, actions, (control, position) => _costs.Of(new FreeingGoal(FreeingKind.Switched, control) { Position = position }));
        return sum + Math.Max(0, (fewest?.Cost ?? 0) - moved);
    }

    /// <summary>Costs are sums of figures in seconds.</summary>
    private const double Rounding = 1e-6;

    private ReachWay? Way(int[] closure) => _cheapest is { } kept && kept.Nodes.AsSpan().SequenceEqual(closure) ? kept : Perform(closure);

    private ReachWay? Perform(int[] closure) => ReachWay.Of(_library, _job, Graph, _costs, Problem!, closure);
}
