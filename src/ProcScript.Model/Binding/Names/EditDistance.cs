namespace ProcScript.Model.Binding.Names;

/// <summary>
/// How many slips of the finger lie between two words: a letter too many, too few, wrong, or two swapped. A wrong capital is none.
/// </summary>
internal static class EditDistance
{
    /// <summary>The distance, or any number above <paramref name="limit"/> where it is farther than that.</summary>
    public static int Between(ReadOnlySpan<char> first, ReadOnlySpan<char> second, int limit)
    {
        if (Math.Abs(first.Length - second.Length) > limit)
        {
            return limit + 1;
        }

        var width = second.Length + 1;
        Span<int> rows = width <= 128 ? stackalloc int[3 * width] : new int[3 * width];
        var above = rows[..width];
        var current = rows[width..(2 * width)];
        var before = rows[(2 * width)..];
        for (var column = 0; column < width; column++)
        {
            above[column] = column;
        }

        for (var row = 1; row <= first.Length; row++)
        {
            current[0] = row;
            var least = row;
            for (var column = 1; column < width; column++)
            {
                var same = Same(first[row - 1], second[column - 1]);
                var value = Math.Min(Math.Min(above[column], current[column - 1]) + 1, above[column - 1] + (same ? 0 : 1));
                if (row > 1 && column > 1 && Same(first[row - 1], second[column - 2]) && Same(first[row - 2], second[column - 1]))
                {
                    value = Math.Min(value, before[column - 2] + 1);
                }

                current[column] = value;
                least = Math.Min(least, value);
            }

            if (least > limit)
            {
                return limit + 1;
            }

            var free = before;
            before = above;
            above = current;
            current = free;
        }

        return above[second.Length];
    }

    private static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
