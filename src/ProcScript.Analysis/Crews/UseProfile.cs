namespace ProcScript.Analysis.Crews;

/// <summary>How much of something is in use at any time, as a list of moments from which on so much is.</summary>
internal sealed class UseProfile
{
    private readonly List<long> _moments = [0];
    private readonly List<int> _used = [0];

    /// <summary>Nothing is in use any more.</summary>
    public void Clear()
    {
        _moments.Clear();
        _used.Clear();
        _moments.Add(0);
        _used.Add(0);
    }

    /// <summary>The earliest start from a moment on at which <paramref name="most"/> is not passed for so long.</summary>
    /// <param name="from">The moment.</param>
    /// <param name="length">How long.</param>
    /// <param name="most">The most that may be in use beside.</param>
    public long Earliest(long from, long length, int most)
    {
        var start = from;
        for (var at = At(from); at < _moments.Count && _moments[at] < start + length; at++)
        {
            if (_used[at] > most)
            {
                // The last stretch is free: nothing is in use for ever.
                start = Math.Max(start, _moments[at + 1]);
            }
        }

        return start;
    }

    /// <summary>How much is in use at a moment.</summary>
    public int Used(long moment) => _used[At(moment)];

    /// <summary>The first moment after this one at which anything changes.</summary>
    public long NextAfter(long moment)
    {
        var next = At(moment) + 1;
        return next < _moments.Count ? _moments[next] : long.MaxValue;
    }

    /// <summary>So much is in use from a moment on for so long.</summary>
    public void Add(long from, long length, int amount)
    {
        var first = Cut(from);
        var last = Cut(from + length);
        for (var at = first; at < last; at++)
        {
            _used[at] += amount;
        }
    }

    /// <summary>Whether so long from a moment on nothing is in use.</summary>
    public bool IsFree(long from, long length) => Earliest(from, length, 0) == from;

    private int Cut(long moment)
    {
        var at = At(moment);
        if (_moments[at] == moment)
        {
            return at;
        }

        _moments.Insert(at + 1, moment);
        _used.Insert(at + 1, _used[at]);
        return at + 1;
    }

    /// <summary>The stretch that a moment lies in.</summary>
    private int At(long moment)
    {
        // Whoever plans along the clock asks about the end.
        if (moment >= _moments[^1])
        {
            return _moments.Count - 1;
        }

        var found = _moments.BinarySearch(moment);
        return found >= 0 ? found : ~found - 1;
    }
}
