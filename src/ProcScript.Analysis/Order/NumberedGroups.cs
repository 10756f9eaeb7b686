using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Order;

/// <summary>Edges grouped by one of their ends, each group in the order of the list.</summary>
internal sealed class EdgeIndex
{
    private readonly int[] _starts;
    private readonly OrderEdge[] _edges;

    private EdgeIndex(int count, IReadOnlyList<OrderEdge> edges, Func<OrderEdge, int> end)
    {
        _starts = new int[count + 1];
        foreach (var edge in edges)
        {
            _starts[end(edge) + 1]++;
        }

        for (var i = 0; i < count; i++)
        {
            _starts[i + 1] += _starts[i];
        }

        var next = _starts.AsSpan(0, count).ToArray();
        _edges = new OrderEdge[edges.Count];
        foreach (var edge in edges)
        {
            _edges[next[end(edge)]++] = edge;
        }
    }

    /// <summary>The edges of one action.</summary>
    public ReadOnlySpan<OrderEdge> this[int action] => _edges.AsSpan(_starts[action].._starts[action + 1]);

    /// <summary>Edges between <paramref name="count"/> actions, by the action that goes first.</summary>
    public static EdgeIndex ByEarlier(int count, IReadOnlyList<OrderEdge> edges) => new(count, edges, edge => edge.Earlier);

    /// <summary>Edges between <paramref name="count"/> actions, by the action that goes later.</summary>
    public static EdgeIndex ByLater(int count, IReadOnlyList<OrderEdge> edges) => new(count, edges, edge => edge.Later);
}
