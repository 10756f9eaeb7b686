namespace ProcScript.Analysis.Reaching.Search;

/// <summary>
/// What has to be brought about, as numbers: each node costs once, however many others it serves, and needs of each of its clauses one node
/// brought about before it. The least-cost closure is sought that brings about all goals.
/// </summary>
/// <param name="Costs">What each node costs; none is below 0.</param>
/// <param name="Clauses">Of each node its clauses, each the nodes of which any one will do.</param>
/// <param name="Along">Of each node those that have to be brought about too, before it or after.</param>
/// <param name="Goals">The nodes that are wanted.</param>
internal sealed record ClosureProblem(double[] Costs, int[][][] Clauses, int[][] Along, int[] Goals)
{
    /// <summary>How many nodes there are.</summary>
    public int Count => Costs.Length;

    /// <summary>
    /// In which round each node is brought about at the earliest, if only some nodes may be; -1 for what is not at all. What serves a node has a
    /// lower round than it has.
    /// </summary>
    public int[] Rounds(Predicate<int> may)
    {
        var rounds = new int[Count];
        Array.Fill(rounds, -1);
        var next = new int[Count];

        // Several ways of a clause may come in one round, and of an earlier clause one that nobody waits for any more: a node is looked at once a
        // round, and waits once a clause. Otherwise what waits for a node doubles from layer to layer.
        var looked = new int[Count];
        var waits = new int[Count];
        Array.Fill(looked, -1);
        Array.Fill(waits, -1);
        // Who waits for a node hangs on it in a chain; all chains lie in one list.
        var last = new int[Count];
        Array.Fill(last, -1);
        var waiting = new List<(int Node, int Before)>(Count);
        var open = Enumerable.Range(0, Count).Where(node => may(node)).ToList();
        for (var round = 0; open.Count > 0; round++)
        {
            var reached = new List<int>();
            foreach (var node in open)
            {
                if (rounds[node] >= 0 || looked[node] == round)
                {
                    continue;
                }

                looked[node] = round;

                while (next[node] < Clauses[node].Length && IsGiven(Clauses[node][next[node]], rounds))
                {
                    next[node]++;
                }

                if (next[node] == Clauses[node].Length)
                {
                    reached.Add(node);
                    continue;
                }

                if (waits[node] == next[node])
                {
                    continue;
                }

                waits[node] = next[node];
                foreach (var way in Clauses[node][next[node]])
                {
                    waiting.Add((node, last[way]));
                    last[way] = waiting.Count - 1;
                }
            }

            open = [];
            foreach (var node in reached)
            {
                rounds[node] = round;
                for (var place = last[node]; place >= 0; place = waiting[place].Before)
                {
                    open.Add(waiting[place].Node);
                }
            }
        }

        return rounds;
    }

    /// <summary>The same without what nothing brings about, and without ways that bring another way of the same clause along.</summary>
    /// <returns>The simpler problem, of the same nodes; null where a goal is out of reach.</returns>
    public ClosureProblem? Simplified()
    {
        var problem = this;
        int[] rounds;
        while (true)
        {
            var known = problem;
            var gone = new bool[Count];
            rounds = problem.Rounds(node => known.Along[node].Length == 0 || !known.Along[node].Any(other => gone[other]));
            if (Goals.Any(goal => rounds[goal] < 0))
            {
                return null;
            }

            // What has to come along and cannot takes the node with it.
            var lost = Enumerable.Range(0, Count).Where(node => rounds[node] >= 0 && known.Along[node].Any(other => rounds[other] < 0)).ToHashSet();
            if (lost.Count == 0)
            {
                break;
            }

            problem = problem with { Clauses = [.. problem.Clauses.Select((clauses, node) => lost.Contains(node) ? [[]] : clauses)] };
        }

        var clauses = new int[Count][][];
        for (var node = 0; node < Count; node++)
        {
            clauses[node] = [.. problem.Clauses[node].Select(clause => clause.Where(way => rounds[way] >= 0).ToArray())];
        }

        problem = problem with { Clauses = clauses };
        for (var pass = 0; pass < MostPasses && problem.WithoutDominated() is { } simpler; pass++)
        {
            problem = simpler;
        }

        return problem;
    }

    /// <summary>How often what a way brings along is gathered anew; each time more is forced, and less each time.</summary>
    private const int MostPasses = 4;

    private ClosureProblem? WithoutDominated()
    {
        var forced = new ForcedClosures(this, onlyBefore: true);
        var isSimpler = false;
        var all = new int[Count][][];
        for (var node = 0; node < Count; node++)
        {
            all[node] = [.. Clauses[node].Select(clause => Undominated(clause, forced))];
            isSimpler |= all[node].Zip(Clauses[node]).Any(pair => pair.First.Length < pair.Second.Length);
        }

        return isSimpler ? this with { Clauses = all } : null;
    }

    private static int[] Undominated(int[] clause, ForcedClosures forced)
    {
        if (clause.Length < 2)
        {
            return clause;
        }

        var left = clause.ToList();
        for (var i = left.Count - 1; i >= 0; i--)
        {
            var along = forced.Of(left[i]);
            if (left.Any(other => other != left[i] && Array.BinarySearch(along, other) >= 0))
            {
                left.RemoveAt(i);
            }
        }

        return left.Count == clause.Length ? clause : [.. left];
    }

    private static bool IsGiven(int[] clause, int[] rounds)
    {
        foreach (var way in clause)
        {
            if (rounds[way] >= 0)
            {
                return true;
            }
        }

        return false;
    }
}
