namespace ProcScript.Cards.Maps;

/// <summary>
/// The lines of the map beside its rows. Parts that hide the same others share one, from all of their rows to all of those hidden, so that six
/// parts in front of one make one arrow. Two lanes stand on the same place only where neither passes a row of the other.
/// </summary>
internal sealed class MapLanes
{
    private readonly List<MapLane> _lanes = [];
    private readonly List<MapLane>[] _ends;

    private MapLanes(int rows) => _ends = [.. Enumerable.Range(0, rows).Select(_ => new List<MapLane>())];

    /// <summary>The lanes, in the order in which they begin.</summary>
    public IReadOnlyList<MapLane> Lanes => _lanes;

    /// <summary>How many places side by side they take.</summary>
    public int Width { get; private set; }

    /// <summary>Lays them out, short ones next to the rows.</summary>
    public static MapLanes Of(MapGraph graph)
    {
        MapLanes lanes = new(graph.Nodes.Count);
        List<List<MapLane>> taken = [];
        var bundles = graph.Edges.GroupBy(edge => edge.Front, edge => edge.Behind)
            .Select(hider => (Front: hider.Key, Behind: hider.Order().ToList()))
            .GroupBy(hider => string.Join(' ', hider.Behind), StringComparer.Ordinal)
            .Select(bundle => (Fronts: bundle.Select(hider => hider.Front).Order().ToList(), bundle.First().Behind))
            .Select(bundle => (bundle.Fronts, bundle.Behind, First: Math.Min(bundle.Fronts[0], bundle.Behind[0]), Last: Math.Max(bundle.Fronts[^1], bundle.Behind[^1])))
            .OrderBy(bundle => bundle.Last - bundle.First)
            .ThenBy(bundle => bundle.First)
            .ThenBy(bundle => bundle.Fronts[0]);
        foreach (var (fronts, behind, first, last) in bundles)
        {
            var place = taken.FindIndex(others => others.TrueForAll(other => other.Last < first || last < other.First));
            if (place < 0)
            {
                place = taken.Count;
                taken.Add([]);
            }

            MapLane lane = new(fronts, behind, place, first, last);
            taken[place].Add(lane);
            lanes._lanes.Add(lane);
        }

        lanes.Width = taken.Count;
        lanes._lanes.Sort((one, other) => one.Fronts[0].CompareTo(other.Fronts[0]));
        // Of what comes in, the farthest lane stands highest, so that no two of a row run on one line; what goes out leaves below.
        foreach (var lane in lanes._lanes.OrderByDescending(lane => lane.Place).ThenBy(lane => lane.Fronts[0]))
        {
            lane.Behind.ToList().ForEach(row => lanes._ends[row].Add(lane));
        }

        foreach (var lane in lanes._lanes)
        {
            lane.Fronts.ToList().ForEach(row => lanes._ends[row].Add(lane));
        }

        return lanes;
    }

    /// <summary>The lanes that touch a row, from its top down; the row's own is the last.</summary>
    public IReadOnlyList<MapLane> EndsAt(int row) => _ends[row];
}

/// <summary>The line from parts to those that each of them hides; all by their rows.</summary>
/// <param name="Fronts">The parts that hide, from the top down.</param>
/// <param name="Behind">Those that they hide, from the top down.</param>
/// <param name="Place">Its place, counted from the rows.</param>
/// <param name="First">The first row that it touches.</param>
/// <param name="Last">The last.</param>
internal sealed record MapLane(IReadOnlyList<int> Fronts, IReadOnlyList<int> Behind, int Place, int First, int Last);
