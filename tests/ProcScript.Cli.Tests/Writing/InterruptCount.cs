using System.Globalization;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>Where the stops of a command fell.</summary>
internal sealed class InterruptCount
{
    private int _before;
    private int _partly;
    private int _after;
    private int _left;

    /// <summary>How many fell between the first file that was begun and the last that got its name.</summary>
    public int Amid { get; private set; }

    /// <summary>Counts one.</summary>
    /// <param name="fresh">How many files are new.</param>
    /// <param name="changes">How many would be if nothing had stopped it.</param>
    /// <param name="isWriting">Whether a file was seen to be begun before the stop.</param>
    /// <param name="hasLeft">Whether files lay there that never got their names.</param>
    public void Add(int fresh, int changes, bool isWriting, bool hasLeft)
    {
        if (fresh == changes)
        {
            _after++;
            return;
        }

        _left += hasLeft ? 1 : 0;
        _partly += fresh > 0 ? 1 : 0;
        if (isWriting || hasLeft || fresh > 0)
        {
            Amid++;
        }
        else
        {
            _before++;
        }
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"stopped {_before + Amid + _after} times; {_before} before it wrote, {Amid} amid its writing, {_after} after; of those amid it, {_partly} left some files new, {_left} files without a name");
}
