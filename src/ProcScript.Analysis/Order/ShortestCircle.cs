using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Order;

/// <summary>
/// Finds a shortest circle in a graph that has one. Every circle takes an edge back against the order of names; a search from the end
/// of each such edge to its beginning finds them all. The searches share a budget, so that a huge knot still gets an answer at once:
/// then the shortest circle found so far.
/// </summary>
internal sealed class ShortestCircle
{
    private const int Budget = 4_000_000;

    private readonly PrecedenceGraph _graph;
    private readonly bool[] _isKnotted;
    private readonly int[] _searched;
    private readonly OrderEdge[] _via;
    private int _visits;

    private ShortestCircle(PrecedenceGraph graph)
    {
        _graph = graph;
        _searched = new int[graph.Count];
        _via = new OrderEdge[graph.Count];
        _isKnotted = new bool[graph.Count];
        Array.Fill(_isKnotted, true);
        foreach (var action in graph.Ordered())
        {
            _isKnotted[action] = false;
        }
    }

    /// <summary>A shortest circle of <paramref name="graph"/>, as edges one after the other.</summary>
    public static List<OrderEdge> In(PrecedenceGraph graph) => new ShortestCircle(graph).Find();

    private List<OrderEdge> Find()
    {
        List<OrderEdge> best = [];
        var search = 0;
        foreach (var back in BackEdges())
        {
            var limit = best.Count == 0 ? int.MaxValue : best.Count - 1;
            if (limit > 0 && (best.Count == 0 || _visits < Budget) && Path(back.Later, back.Earlier, limit, ++search) is { } path)
            {
                best = [back, .. path];
            }
        }

        return best;
    }

    private List<OrderEdge> BackEdges()
    {
        var edges = new List<OrderEdge>();
        for (var action = 0; action < _graph.Count; action++)
        {
            foreach (var edge in _isKnotted[action] ? _graph.After(action) : [])
            {
                if (edge.Later <= edge.Earlier)
                {
                    edges.Add(edge);
                }
            }
        }

        return edges;
    }

    /// <summary>The shortest way between two actions, if it has fewer than <paramref name="limit"/> edges.</summary>
    private List<OrderEdge>? Path(int from, int to, int limit, int search)
    {
        if (from == to)
        {
            return [];
        }

        var open = new Queue<(int Action, int Length)>([(from, 0)]);
        _searched[from] = search;
        while (open.TryDequeue(out var next) && next.Length + 1 < limit)
        {
            foreach (var edge in _graph.After(next.Action))
            {
                _visits++;
                if (!_isKnotted[edge.Later] || _searched[edge.Later] == search)
                {
                    continue;
                }

                _searched[edge.Later] = search;
                _via[edge.Later] = edge;
                if (edge.Later == to)
                {
                    return Trace(from, to);
                }

                open.Enqueue((edge.Later, next.Length + 1));
            }
        }

        return null;
    }

    private List<OrderEdge> Trace(int from, int to)
    {
        var path = new List<OrderEdge>();
        for (var action = to; action != from; action = _via[action].Earlier)
        {
            path.Add(_via[action]);
        }

        path.Reverse();
        return path;
    }
}
