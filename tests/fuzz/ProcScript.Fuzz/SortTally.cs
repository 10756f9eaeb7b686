using System.Globalization;

namespace ProcScript.Fuzz;

/// <summary>What the inputs of one sort have taken.</summary>
internal sealed class SortTally
{
    private long _inputs;
    private TimeSpan _slowest;
    private long _most;

    /// <summary>Counts an input.</summary>
    public void Add(TimeSpan time, long bytes)
    {
        _inputs++;
        _slowest = time > _slowest ? time : _slowest;
        _most = Math.Max(_most, bytes);
    }

    /// <inheritdoc/>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{_inputs,9} inputs, the slowest {_slowest.TotalMilliseconds:0} ms, the largest {_most >> 20} MiB");
}
