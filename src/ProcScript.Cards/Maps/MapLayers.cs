namespace ProcScript.Cards.Maps;

/// <summary>
/// A layered layout: every part below all that comes off before it and is tied to it by a line, a line that passes a layer
/// taking a place of its own there, and the places of each layer put in an order with few crossings.
/// </summary>
internal sealed class MapLayers
{
    private const int Sweeps = 12;

    private readonly int[] _layerOf;
    private readonly List<List<int>> _layers = [];
    private readonly List<List<int>> _above = [];
    private readonly List<List<int>> _below = [];
    private readonly List<IReadOnlyList<int>> _routes = [];

    private MapLayers(MapGraph graph, int width)
    {
        _layerOf = Assign(graph, width);
        foreach (var layer in _layerOf)
        {
            Add(layer);
        }

        foreach (var edge in graph.Edges)
        {
            _routes.Add(Route(edge));
        }
    }

    /// <summary>The places of each layer from left to right. A place below the number of parts is that part, another a passing line.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Layers => _layers;

    /// <summary>For each line, the places it goes through from the upper end to the lower.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Routes => _routes;

    /// <summary>Lays a graph out with at most <paramref name="width"/> parts side by side.</summary>
    public static MapLayers Of(MapGraph graph, int width)
    {
        MapLayers layers = new(graph, width);
        layers.Order();
        return layers;
    }

    private static int[] Assign(MapGraph graph, int width)
    {
        var uppers = graph.Edges.ToLookup(edge => edge.Lower, edge => edge.Upper);
        var layerOf = new int[graph.Nodes.Count];
        List<int> filled = [];
        for (var node = 0; node < layerOf.Length; node++)
        {
            var layer = uppers[node].Select(upper => layerOf[upper] + 1).DefaultIfEmpty(0).Max();
            while (layer < filled.Count && filled[layer] == width)
            {
                layer++;
            }

            while (filled.Count <= layer)
            {
                filled.Add(0);
            }

            filled[layer]++;
            layerOf[node] = layer;
        }

        return layerOf;
    }

    private int Add(int layer)
    {
        while (_layers.Count <= layer)
        {
            _layers.Add([]);
        }

        var place = _above.Count;
        _layers[layer].Add(place);
        _above.Add([]);
        _below.Add([]);
        return place;
    }

    private IReadOnlyList<int> Route(MapLink edge)
    {
        List<int> route = [edge.Upper];
        for (var layer = _layerOf[edge.Upper] + 1; layer < _layerOf[edge.Lower]; layer++)
        {
            route.Add(Add(layer));
        }

        route.Add(edge.Lower);
        foreach (var (upper, lower) in route.Zip(route.Skip(1)))
        {
            _below[upper].Add(lower);
            _above[lower].Add(upper);
        }

        return route;
    }

    private void Order()
    {
        var best = Snapshot();
        var fewest = LayerCrossings.Count(_layers, _below);
        for (var sweep = 0; sweep < Sweeps && fewest > 0; sweep++)
        {
            Sweep(downwards: sweep % 2 == 0);
            var crossings = LayerCrossings.Count(_layers, _below);
            if (crossings < fewest)
            {
                (best, fewest) = (Snapshot(), crossings);
            }
        }

        for (var layer = 0; layer < _layers.Count; layer++)
        {
            _layers[layer] = best[layer];
        }
    }

    private List<List<int>> Snapshot() => [.. _layers.Select(layer => layer.ToList())];

    private void Sweep(bool downwards)
    {
        var order = Enumerable.Range(1, Math.Max(0, _layers.Count - 1));
        foreach (var layer in downwards ? order : order.Select(layer => _layers.Count - 1 - layer))
        {
            var fixedLayer = _layers[downwards ? layer - 1 : layer + 1];
            var position = fixedLayer.Select((place, at) => (place, at)).ToDictionary(pair => pair.place, pair => (double)pair.at);
            var neighbours = downwards ? _above : _below;
            var own = _layers[layer];
            // A place without a line to that side stays where it is.
            var wanted = own.Select((place, at) => neighbours[place].Count == 0
                ? (place, key: at * (double)fixedLayer.Count / own.Count)
                : (place, key: neighbours[place].Average(neighbour => position[neighbour])));
            _layers[layer] = [.. wanted.OrderBy(pair => pair.key).Select(pair => pair.place)];
        }
    }
}
