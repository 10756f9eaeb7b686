namespace ProcScript.Analysis.Order;

/// <summary>A list in groups with the numbers 0 and up, each group in the order of the list.</summary>
internal sealed class NumberedGroups<T>
{
    private readonly int[] _starts;
    private readonly T[] _items;

    /// <summary>Groups a list.</summary>
    /// <param name="count">How many groups there are.</param>
    /// <param name="items">The list.</param>
    /// <param name="group">The group of an item.</param>
    public NumberedGroups(int count, List<T> items, Func<T, int> group)
    {
        _starts = new int[count + 1];
        foreach (var item in items)
        {
            _starts[group(item) + 1]++;
        }

        for (var i = 0; i < count; i++)
        {
            _starts[i + 1] += _starts[i];
        }

        var next = _starts.AsSpan(0, count).ToArray();
        _items = new T[items.Count];
        foreach (var item in items)
        {
            _items[next[group(item)]++] = item;
        }
    }

    /// <summary>The items, group after group.</summary>
    public ReadOnlySpan<T> All => _items;

    /// <summary>The items of one group.</summary>
    public ReadOnlySpan<T> this[int group] => _items.AsSpan(_starts[group].._starts[group + 1]);
}
