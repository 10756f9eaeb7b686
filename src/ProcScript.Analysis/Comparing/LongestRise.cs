namespace ProcScript.Analysis.Comparing;

/// <summary>The longest rising part of a row of numbers that are all different: what stayed in its order when things were moved.</summary>
internal static class LongestRise
{
    /// <summary>The numbers that make it up; of several as long, the one that ends lowest.</summary>
    public static HashSet<int> Of(IReadOnlyList<int> numbers)
    {
        // Patience sorting: tops[k] is where the lowest end of a rise of k + 1 numbers stands.
        var tops = new List<int>();
        var before = new int[numbers.Count];
        for (var i = 0; i < numbers.Count; i++)
        {
            var (low, high) = (0, tops.Count);
            while (low < high)
            {
                var middle = (low + high) / 2;
                (low, high) = numbers[tops[middle]] < numbers[i] ? (middle + 1, high) : (low, middle);
            }

            before[i] = low > 0 ? tops[low - 1] : -1;
            if (low == tops.Count)
            {
                tops.Add(i);
            }
            else
            {
                tops[low] = i;
            }
        }

        var rise = new HashSet<int>();
        for (var i = tops.Count > 0 ? tops[^1] : -1; i >= 0; i = before[i])
        {
            rise.Add(numbers[i]);
        }

        return rise;
    }
}
