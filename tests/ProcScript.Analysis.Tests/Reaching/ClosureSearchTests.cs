using CsCheck;
using ProcScript.Analysis.Reaching.Search;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>The search for the least-cost closure, against every set of nodes that there is.</summary>
public sealed class ClosureSearchTests
{
    private const int Nodes = 9;

    private static readonly Gen<ClosureProblem> Problems =
        from seed in Gen.UInt
        select Make(new Random((int)seed));

    [Fact]
    public void What_is_found_costs_as_much_as_the_best_of_all_sets()
    {
        var (found, chosen) = (0, 0);
        Problems.Sample(
            problem =>
            {
                var best = BestOfAll(problem);
                if (problem.Simplified() is not { } simpler)
                {
                    Assert.Null(best);
                    return;
                }

                var result = ClosureSearch.Solve(simpler, [], closure => closure.Sum(node => problem.Costs[node]), long.MaxValue);
                Assert.Equal(best, result.Closure is null ? null : result.Cost);
                Assert.Equal(result.Cost, result.Bound);
                if (result.Closure is { } closure)
                {
                    Assert.True(IsClosure(problem, closure));
                    Interlocked.Increment(ref found);
                    Interlocked.Add(ref chosen, closure.Count(node => problem.Clauses[node].Any(clause => clause.Length > 1)));
                }
            },
            iter: Depth.Of(4_000));
        Assert.True(found > 100 && chosen > 100, $"only {found} were found, with {chosen} choices");
    }

    [Fact]
    public void Where_the_budget_ends_the_bound_is_not_above_the_best()
    {
        var open = 0;
        Problems.Sample(
            problem =>
            {
                if (problem.Simplified() is not { } simpler || BestOfAll(problem) is not { } best)
                {
                    return;
                }

                var result = ClosureSearch.Solve(simpler, [], closure => closure.Sum(node => problem.Costs[node]), budget: 5);
                Assert.True(result.Bound <= best);
                Assert.True(result.Closure is null || result.Cost >= best);
                Interlocked.Add(ref open, result.Bound < best ? 1 : 0);
            },
            iter: Depth.Of(4_000));
        Assert.True(open > 10, $"only {open} searches ended too soon");
    }

    [Fact]
    public void A_closure_that_cannot_be_worked_leaves_the_bound_where_it_is()
    {
        // 0 wants 1 or 2; 1 is cheaper and cannot be worked.
        var problem = new ClosureProblem([0, 3, 5], [[[1, 2]], [], []], [[], [], []], [0]);
        var result = ClosureSearch.Solve(problem, [], closure => closure.Contains(1) ? null : closure.Sum(node => problem.Costs[node]), long.MaxValue);
        Assert.Equal([0, 2], result.Closure!);
        Assert.Equal((5.0, 3.0), (result.Cost, result.Bound));
    }

    /// <summary>Each node of a layer waits for either of two below it, twice: looked at anew for each, the work would double with each layer.</summary>
    [Fact]
    public void Many_layers_of_choices_are_one_round_each()
    {
        const int Layers = 100;
        int[][][] clauses =
        [
            .. Enumerable.Range(0, 2 * Layers).Select(node => node / 2 * 2 is 0 ? Array.Empty<int[]>() : [[node / 2 * 2 - 2, node / 2 * 2 - 1], [node / 2 * 2 - 1, node / 2 * 2 - 2]]),
        ];
        var problem = new ClosureProblem(new double[2 * Layers], clauses, [.. clauses.Select(_ => Array.Empty<int>())], [2 * Layers - 1]);

        Assert.Equal(Enumerable.Range(0, 2 * Layers).Select(node => node / 2), problem.Rounds(_ => true));
    }

    private static ClosureProblem Make(Random random)
    {
        var clauses = new int[Nodes][][];
        var along = new int[Nodes][];
        for (var node = 0; node < Nodes; node++)
        {
            clauses[node] = [.. Enumerable.Range(0, random.Next(3)).Select(_ => Enumerable.Range(0, random.Next(1, 4)).Select(_ => random.Next(Nodes)).Distinct().ToArray())];
            along[node] = random.Next(5) == 0 ? [random.Next(Nodes)] : [];
        }

        return new ClosureProblem([.. Enumerable.Range(0, Nodes).Select(_ => (double)random.Next(10))], clauses, along, [.. Enumerable.Range(0, random.Next(1, 3))]);
    }

    private static double? BestOfAll(ClosureProblem problem)
    {
        double? best = null;
        for (var set = 0; set < 1 << Nodes; set++)
        {
            int[] closure = [.. Enumerable.Range(0, Nodes).Where(node => (set >> node & 1) == 1)];
            var cost = closure.Sum(node => problem.Costs[node]);
            if ((best is null || cost < best) && IsClosure(problem, closure))
            {
                best = cost;
            }
        }

        return best;
    }

    /// <summary>Whether a set has all goals and all that has to come along, and can be brought about one after the other.</summary>
    private static bool IsClosure(ClosureProblem problem, int[] closure)
    {
        var left = closure.ToHashSet();
        var done = new HashSet<int>();
        while (left.FirstOrDefault(node => problem.Clauses[node].All(clause => clause.Any(done.Contains)), -1) is >= 0 and var next)
        {
            left.Remove(next);
            done.Add(next);
        }

        return left.Count == 0 && problem.Goals.All(done.Contains) && done.All(node => problem.Along[node].All(done.Contains));
    }
}
