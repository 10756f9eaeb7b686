namespace ProcScript.Model.Figures;

/// <summary>
/// The file of a picture as a store found it. Its bytes are fetched only when somebody looks at them, and what came of that is kept: who asks
/// again hears the same.
/// </summary>
/// <param name="trouble">Why there is nothing to fetch; <see cref="FigureTrouble.None"/> where there is.</param>
/// <param name="length">How many bytes it has.</param>
/// <param name="fetch">Fetches them; null where they cannot be read.</param>
/// <param name="detail">What the system said, where it refused.</param>
public sealed class FigureFile(FigureTrouble trouble, long length, Func<byte[]?> fetch, string detail = "")
{
    private readonly Lock _lock = new();
    private (FigureLimits Limits, ExaminedFigure Figure)? _examined;

    /// <summary>No such file.</summary>
    public static FigureFile Missing { get; } = new(FigureTrouble.Missing, 0, () => null);

    /// <summary>How many bytes it has.</summary>
    public long Length => length;

    /// <summary>A picture that is in memory.</summary>
    public static FigureFile Of(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        return new FigureFile(FigureTrouble.None, bytes.Length, () => bytes);
    }

    /// <summary>A file that gives nothing.</summary>
    public static FigureFile Refused(FigureTrouble trouble, string detail = "") => new(trouble, 0, () => null, detail);

    /// <summary>Looks into it. What is too large is not read.</summary>
    /// <param name="path">Its path, whose ending says what its author takes it for.</param>
    /// <param name="limits">What is too large.</param>
    public ExaminedFigure Examine(string path, FigureLimits limits)
    {
        lock (_lock)
        {
            if (_examined is var (before, figure) && before == limits)
            {
                return figure;
            }

            figure = trouble != FigureTrouble.None ? ExaminedFigure.Refused(trouble, detail)
                : length > limits.Bytes ? ExaminedFigure.Refused(FigureTrouble.TooManyBytes)
                : fetch() is { } bytes ? FigureReader.Read(path, bytes, limits)
                : ExaminedFigure.Refused(FigureTrouble.Unreadable, detail);
            _examined = (limits, figure);
            return figure;
        }
    }

    /// <summary>All that an answer about it depends on: two files with the same words are the same.</summary>
    /// <param name="most">From how many bytes on its length has to do: nobody reads more.</param>
    public byte[] Identity(long most) =>
        [(byte)trouble, .. BitConverter.GetBytes(length), .. Content(most) ?? []];

    /// <summary>Its bytes; null where there are none, they cannot be read, or there are more.</summary>
    /// <param name="most">The most that are read.</param>
    public byte[]? Content(long most) => trouble == FigureTrouble.None && length <= most ? fetch() : null;
}

/// <summary>What a shop takes for too large.</summary>
/// <param name="Bytes">The most bytes of a file.</param>
/// <param name="Pixels">The most pixels of a picture.</param>
public readonly record struct FigureLimits(long Bytes, long Pixels)
{
    /// <summary>The most bytes that any shop can choose.</summary>
    public const long MostBytes = 64 << 20;
}
