using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching.Search;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching.Visits;

/// <summary>Finds the visit that costs least: which steps of the jobs it has, and in what order.</summary>
internal sealed class VisitSearch
{
    /// <summary>How many orders of the jobs are tried with the same steps.</summary>
    private const int MostOrders = 24;

    /// <summary>Costs are sums of figures in seconds.</summary>
    private const double Rounding = 1e-6;

    private readonly Library _library;
    private readonly MachineFacts _facts;
    private readonly ImmutableArray<VisitJob> _jobs;
    private readonly VisitProblem _problem;
    private readonly List<ImmutableArray<int>> _orders;

    private VisitSearch(Library library, MachineFacts facts, ImmutableArray<VisitJob> jobs)
    {
        (_library, _facts, _jobs) = (library, facts, jobs);
        _problem = new VisitProblem(facts, jobs);
        _orders = [.. Orders([], [.. Enumerable.Range(0, jobs.Length)]).Take(MostOrders)];
    }

    /// <summary>The best visit; null where none was found.</summary>
    public Visit? Best { get; private set; }

    /// <summary>What any visit costs at the least.</summary>
    public double Bound { get; private set; }

    /// <summary>How many choices were looked at.</summary>
    public int Looked { get; private set; }

    /// <summary>Searches.</summary>
    /// <param name="library">The library.</param>
    /// <param name="facts">The machine.</param>
    /// <param name="jobs">The jobs.</param>
    /// <param name="budget">How many clauses may be looked at.</param>
    public static VisitSearch Of(Library library, MachineFacts facts, ImmutableArray<VisitJob> jobs, long budget)
    {
        var search = new VisitSearch(library, facts, jobs);
        search.Run(budget);
        return search;
    }

    private void Run(long budget)
    {
        var least = 0.0;
        if (_problem.Problem is { } problem)
        {
            var result = ClosureSearch.Solve(problem, [], closure => Judge(problem, closure), budget);
            (least, Looked) = (result.Bound, result.Looked);
        }

        // Whatever the search takes for needless: the jobs as they are, one after the other, are a visit too.
        foreach (var (order, workAtOnce) in Sequences())
        {
            Keep(Prove(order, VisitMerge.InOrder(Jobs(order), workAtOnce, _ => true)));
        }

        Bound = Best is { } best ? best.Cost - Math.Max(0, best.Handling - least) : 0;
    }

    /// <summary>What a visit with some steps costs, the order being the best of those that were tried; null where none can be worked.</summary>
    private JudgedClosure? Judge(ClosureProblem problem, int[] closure)
    {
        var has = closure.ToHashSet();
        var sum = closure.Sum(node => problem.Costs[node]);
        Visit? cheapest = null;
        foreach (var visit in Visits(has))
        {
            if (Try(visit))
            {
                return new JudgedClosure(visit!.Handling, visit.Handling);
            }
        }

        // Controls that go to and fro: the order in which they do so least.
        var moved = closure.Where(_problem.MovesControl).Sum(node => problem.Costs[node]);
        if (VisitMerge.Actions(_jobs, step => _problem.Has(step, has, setsControls: false)) is { Count: > 0 } actions
            && ControlMoves.Fewest(_facts, [.. actions.Keys.Where(request => request.Verb != Verb.Set)], _problem.CostOfSetting) is { } fewest)
        {
            sum += Math.Max(0, fewest.Cost - moved);
            Try(Prove(_orders[0], VisitMerge.Interleaved(_jobs, actions, fewest.Order)));
        }

        return cheapest is null ? null : new JudgedClosure(cheapest.Handling, Math.Min(cheapest.Handling, sum + cheapest.Besides));

        bool Try(Visit? visit)
        {
            if (visit is not null && !(visit.Handling >= cheapest?.Handling))
            {
                cheapest = visit;
                Keep(visit);
            }

            return cheapest is not null && cheapest.Handling - cheapest.Besides <= sum + Rounding;
        }
    }

    private IEnumerable<Visit?> Visits(HashSet<int> closure)
    {
        bool Has(VisitStep step) => _problem.Has(step, closure, setsControls: false);
        foreach (var (order, workAtOnce) in Sequences())
        {
            yield return Prove(order, VisitMerge.InOrder(Jobs(order), workAtOnce, Has));
        }

        foreach (var order in _orders)
        {
            yield return VisitMerge.Actions(Jobs(order), Has) is { Count: > 0 } actions
                && ReachOrder.Of(_facts, [.. actions.Keys], [.. actions.Keys.Where(request => request.Target is Energy or Fluid)]) is { } done
                    ? Prove(order, VisitMerge.Interleaved(Jobs(order), actions, done))
                    : null;
        }

        foreach (var (order, workAtOnce) in Sequences())
        {
            yield return Prove(order, VisitMerge.InOrder(Jobs(order), workAtOnce, step => _problem.Has(step, closure, setsControls: true)));
        }
    }

    private IEnumerable<(ImmutableArray<int> Order, bool WorkAtOnce)> Sequences() =>
        from order in _orders
        from workAtOnce in order.SkipLast(1).Any(place => !_jobs[place].Work.IsEmpty) ? (bool[])[false, true] : [false]
        select (order, workAtOnce);

    private ImmutableArray<VisitJob> Jobs(ImmutableArray<int> order) => [.. order.Select(place => _jobs[place])];

    private Visit? Prove(ImmutableArray<int> order, Procedure procedure) => Visit.Of(_library, _facts, procedure) is { } visit ? visit with { Order = order } : null;

    private void Keep(Visit? visit)
    {
        if (visit is not null && (Best is not { } best || visit.Handling < best.Handling - Rounding || (visit.Handling <= best.Handling && visit.Cost < best.Cost)))
        {
            Best = visit;
        }
    }

    private static IEnumerable<ImmutableArray<int>> Orders(ImmutableArray<int> taken, ImmutableArray<int> left) => left.IsEmpty
        ? [taken]
        : left.SelectMany(next => Orders(taken.Add(next), left.Remove(next)));
}
