using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Maps;

/// <summary>The map as a graph: parts by their place in the order of coming off.</summary>
/// <param name="Nodes">The parts.</param>
/// <param name="Edges">Who hides whom, each pair once.</param>
internal sealed record MapGraph(IReadOnlyList<PlanMapNode> Nodes, IReadOnlyList<MapLink> Edges)
{
    /// <summary>Reads the graph from a plan; a part that hides itself, or that the map does not have, draws no line.</summary>
    public static MapGraph Of(PlanMap map)
    {
        Dictionary<string, int> places = new(StringComparer.Ordinal);
        for (var i = 0; i < map.Nodes.Length; i++)
        {
            places.TryAdd(map.Nodes[i].Name, i);
        }

        var edges = map.Edges
            .Where(edge => places.ContainsKey(edge.Front) && places.ContainsKey(edge.Behind))
            .Select(edge => new MapLink(places[edge.Front], places[edge.Behind]))
            .Where(edge => edge.Front != edge.Behind)
            .Distinct();
        return new MapGraph(map.Nodes, [.. edges]);
    }
}

/// <summary>One part hides another; both by number.</summary>
/// <param name="Front">The part in front.</param>
/// <param name="Behind">The part behind.</param>
internal readonly record struct MapLink(int Front, int Behind);
