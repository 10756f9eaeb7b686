namespace ProcScript.Analysis.Reaching.Search;

/// <summary>
/// What each node leads to beyond what it forces, roughly: the cheapest ways of its clauses, of which the dearest counts in full and the others by
/// themselves, for what lies deep down often serves them all. No bound, but it says which way looks cheap.
/// </summary>
internal static class DeepCosts
{
    /// <summary>The costs, by node.</summary>
    public static double[] Of(ClosureProblem problem)
    {
        var rounds = problem.Rounds(_ => true);
        var whole = new double[problem.Count];
        Array.Fill(whole, double.PositiveInfinity);
        var deep = new double[problem.Count];
        foreach (var node in Enumerable.Range(0, problem.Count).Where(node => rounds[node] >= 0).OrderBy(node => rounds[node]))
        {
            var (sum, deepest, chosen) = (0.0, 0.0, 0.0);
            foreach (var clause in problem.Clauses[node])
            {
                var way = clause.MinBy(each => whole[each]);
                var own = problem.Costs[way];
                sum += own;
                deepest = Math.Max(deepest, whole[way] - own);
                chosen += clause.Length > 1 ? own : 0;
                deep[node] = Math.Max(deep[node], clause.Length > 1 ? whole[way] - own : deep[way]);
            }

            whole[node] = problem.Costs[node] + sum + deepest;
            deep[node] += chosen;
        }

        return deep;
    }
}
