namespace ProcScript.Cards.Maps;

/// <summary>Counts how often lines between neighbouring layers cross.</summary>
internal static class LayerCrossings
{
    /// <summary>The crossings over all layers: lines taken from left to right by their upper ends, the inversions of their lower ends.</summary>
    public static long Count(IReadOnlyList<IReadOnlyList<int>> layers, IReadOnlyList<List<int>> below)
    {
        long crossings = 0;
        for (var layer = 0; layer + 1 < layers.Count; layer++)
        {
            var position = layers[layer + 1].Select((place, at) => (place, at)).ToDictionary(pair => pair.place, pair => pair.at);
            var ends = layers[layer].SelectMany(place => below[place].Select(lower => position[lower]).Order());
            crossings += Inversions([.. ends], layers[layer + 1].Count);
        }

        return crossings;
    }

    /// <summary>Pairs in the wrong order, counted with a binary indexed tree.</summary>
    private static long Inversions(IReadOnlyList<int> ends, int width)
    {
        var tree = new int[width + 1];
        long inversions = 0;
        for (var seen = 0; seen < ends.Count; seen++)
        {
            inversions += seen;
            for (var i = ends[seen] + 1; i > 0; i -= i & -i)
            {
                inversions -= tree[i];
            }

            for (var i = ends[seen] + 1; i <= width; i += i & -i)
            {
                tree[i]++;
            }
        }

        return inversions;
    }
}
