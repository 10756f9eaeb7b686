namespace ProcScript.Analysis.Reaching.Search;

/// <summary>What a node brings along whatever is chosen: itself, the only ways of its clauses, and so on. Worked out once somebody asks.</summary>
/// <param name="problem">The problem.</param>
/// <param name="onlyBefore">Whether only what has to be brought about before it counts, and not what has to come along, which may itself wait for it.</param>
internal sealed class ForcedClosures(ClosureProblem problem, bool onlyBefore)
{
    private readonly int[]?[] _closures = new int[]?[problem.Count];
    private readonly int[] _seen = new int[problem.Count];
    private int _turn;

    /// <summary>The nodes, in ascending order.</summary>
    public int[] Of(int node)
    {
        if (_closures[node] is { } known)
        {
            return known;
        }

        _turn++;
        var found = new List<int>();
        var open = new Stack<int>([node]);
        _seen[node] = _turn;
        while (open.TryPop(out var at))
        {
            found.Add(at);
            foreach (var clause in problem.Clauses[at])
            {
                if (clause.Length == 1)
                {
                    Open(clause[0], open);
                }
            }

            foreach (var other in onlyBefore ? [] : problem.Along[at])
            {
                Open(other, open);
            }
        }

        found.Sort();
        return _closures[node] = [.. found];
    }

    private void Open(int node, Stack<int> open)
    {
        if (_seen[node] != _turn)
        {
            _seen[node] = _turn;
            open.Push(node);
        }
    }
}
