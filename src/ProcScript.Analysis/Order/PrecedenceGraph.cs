using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Order;

/// <summary>Actions, named 0 and up, and which must go before which.</summary>
/// <param name="count">How many actions there are.</param>
/// <param name="edges">The edges; a pair may have several.</param>
internal sealed class PrecedenceGraph(int count, List<OrderEdge> edges)
{
    private readonly NumberedGroups<OrderEdge> _after = new(count, edges, edge => edge.Earlier);

    /// <summary>How many actions there are.</summary>
    public int Count => count;

    /// <summary>The edges that begin at an action.</summary>
    public ReadOnlySpan<OrderEdge> After(int action) => _after[action];

    /// <summary>The order that keeps every edge and, of those, has the lowest names first; null where there is a cycle.</summary>
    public IReadOnlyList<int>? LeastOrder()
    {
        var order = Ordered();
        return order.Count == Count ? order : null;
    }

    /// <summary>As much of the least order as does not wait for a cycle.</summary>
    public IReadOnlyList<int> Ordered()
    {
        var waiting = new int[count];
        foreach (var edge in edges)
        {
            waiting[edge.Later]++;
        }

        var ready = new PriorityQueue<int, int>();
        for (var i = 0; i < count; i++)
        {
            if (waiting[i] == 0)
            {
                ready.Enqueue(i, i);
            }
        }

        var order = new List<int>(count);
        while (ready.TryDequeue(out var action, out _))
        {
            order.Add(action);
            foreach (var edge in After(action))
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
