using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Order;

/// <summary>Actions, named 0 and up, and which must go before which.</summary>
internal sealed class PrecedenceGraph
{
    private readonly List<OrderEdge>[] _after;
    private readonly int[] _before;

    private PrecedenceGraph(int count)
    {
        _after = new List<OrderEdge>[count];
        _before = new int[count];
        for (var i = 0; i < count; i++)
        {
            _after[i] = [];
        }
    }

    /// <summary>How many actions there are.</summary>
    public int Count => _before.Length;

    /// <summary>The graph of <paramref name="count"/> actions with the given edges; a pair may have several.</summary>
    public static PrecedenceGraph Of(int count, IEnumerable<OrderEdge> edges)
    {
        var graph = new PrecedenceGraph(count);
        foreach (var edge in edges)
        {
            graph._after[edge.Earlier].Add(edge);
            graph._before[edge.Later]++;
        }

        return graph;
    }

    /// <summary>The edges that begin at an action.</summary>
    public IReadOnlyList<OrderEdge> After(int action) => _after[action];

    /// <summary>The order that keeps every edge and, of those, has the lowest names first; null where there is a cycle.</summary>
    public IReadOnlyList<int>? LeastOrder()
    {
        var order = Ordered();
        return order.Count == Count ? order : null;
    }

    /// <summary>As much of the least order as does not wait for a cycle.</summary>
    public IReadOnlyList<int> Ordered()
    {
        var waiting = (int[])_before.Clone();
        var ready = new PriorityQueue<int, int>();
        for (var i = 0; i < Count; i++)
        {
            if (waiting[i] == 0)
            {
                ready.Enqueue(i, i);
            }
        }

        var order = new List<int>(Count);
        while (ready.TryDequeue(out var action, out _))
        {
            order.Add(action);
            foreach (var edge in _after[action])
            {
                if (--waiting[edge.Later] == 0)
                {
                    ready.Enqueue(edge.Later, edge.Later);
                }
            }
        }

        return order;
    }
}
