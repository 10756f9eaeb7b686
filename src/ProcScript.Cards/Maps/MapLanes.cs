namespace ProcScript.Cards.Maps;

/// <summary>
/// The lines of the map beside its rows: one lane for each part that hides others, from its own row to all of theirs. Two lanes stand on the
/// same place only where neither passes a row of the other.
/// </summary>
internal sealed class MapLanes
{
    private readonly Dictionary<int, MapLane> _lanes = [];
    private readonly Dictionary<int, List<int>> _ends = [];

    private MapLanes()
    {
    }

    /// <summary>The lanes by the parts that they begin at.</summary>
    public IReadOnlyDictionary<int, MapLane> Lanes => _lanes;

    /// <summary>How many places side by side they take.</summary>
    public int Width { get; private set; }

    /// <summary>Lays them out, short ones next to the rows.</summary>
    public static MapLanes Of(MapGraph graph)
    {
        MapLanes lanes = new();
        List<List<MapLane>> taken = [];
        var hiders = graph.Edges.GroupBy(edge => edge.Front, edge => edge.Behind)
            .Select(hider => (Front: hider.Key, Behind: hider.Order().ToList()))
            .Select(hider => (hider.Front, hider.Behind, First: Math.Min(hider.Front, hider.Behind[0]), Last: Math.Max(hider.Front, hider.Behind[^1])))
            .OrderBy(hider => hider.Last - hider.First)
            .ThenBy(hider => hider.First)
            .ThenBy(hider => hider.Front);
        foreach (var (front, behind, first, last) in hiders)
        {
            var place = taken.FindIndex(others => others.TrueForAll(other => other.Last < first || last < other.First));
            if (place < 0)
            {
                place = taken.Count;
                taken.Add([]);
            }

            MapLane lane = new(front, behind, place, first, last);
            taken[place].Add(lane);
            lanes._lanes.Add(front, lane);
        }

        lanes.Width = taken.Count;
        foreach (var row in Enumerable.Range(0, graph.Nodes.Count))
        {
            // Of what comes in, the farthest lane stands highest, so that no two of a row run on one line; what goes out leaves below.
            var coming = lanes._lanes.Values.Where(lane => lane.Behind.Contains(row)).OrderByDescending(lane => lane.Place).ThenBy(lane => lane.Front).Select(lane => lane.Front);
            lanes._ends.Add(row, [.. coming, .. lanes._lanes.ContainsKey(row) ? [row] : Array.Empty<int>()]);
        }

        return lanes;
    }

    /// <summary>The parts whose lanes touch a row, from its top down; the row's own is the last.</summary>
    public IReadOnlyList<int> EndsAt(int row) => _ends[row];
}

/// <summary>The line from a part to those that it hides; all by their rows.</summary>
/// <param name="Front">The part that hides.</param>
/// <param name="Behind">Those that it hides, from the top down.</param>
/// <param name="Place">Its place, counted from the rows.</param>
/// <param name="First">The first row that it touches.</param>
/// <param name="Last">The last.</param>
internal sealed record MapLane(int Front, IReadOnlyList<int> Behind, int Place, int First, int Last);
