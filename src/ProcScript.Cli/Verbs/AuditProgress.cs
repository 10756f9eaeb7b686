using System.Globalization;

namespace ProcScript.Cli.Verbs;

/// <summary>How far an audit has come, on one line beside the output; nothing where no person looks on.</summary>
/// <param name="around">The run.</param>
internal sealed class AuditProgress(Surroundings around) : IDisposable
{
    private const int EveryMilliseconds = 200;

    private readonly Lock _gate = new();
    private long _last = long.MinValue / 2;
    private int _width;

    /// <summary>Says it, not too often. Safe to call from several threads.</summary>
    public void Tell(int done, int all)
    {
        if (!around.ErrorIsTerminal)
        {
            return;
        }

        lock (_gate)
        {
            var now = Environment.TickCount64;
            if (now - _last < EveryMilliseconds && done < all)
            {
                return;
            }

            _last = now;
            var line = string.Create(CultureInfo.InvariantCulture, $"{done} of {all} mistakes tried");
            around.Error.Write($"\r{line.PadRight(_width)}");
            around.Error.Flush();
            _width = line.Length;
        }
    }

    /// <summary>Takes the line away.</summary>
    public void Clear()
    {
        lock (_gate)
        {
            if (_width > 0)
            {
                around.Error.Write($"\r{new string(' ', _width)}\r");
                around.Error.Flush();
                _width = 0;
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Clear();
}
