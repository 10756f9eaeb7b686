using System.Collections.Concurrent;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Sources;

/// <summary>
/// The library as it lies on the disk, and the standard input where the user asked for it. Each file is read once: whoever asks again, in
/// the same run, hears the same.
/// </summary>
/// <param name="selection">The files that the user asked about.</param>
/// <param name="openInput">Opens the standard input.</param>
internal sealed class DiskSourceStore(SourceSelection selection, Func<Stream> openInput) : ISourceStore
{
    private readonly ConcurrentDictionary<string, SourceReading> _readings = new(StringComparer.Ordinal);
    private readonly LibraryDisk _disk = new(selection.Root);
    private readonly DiskFigures _figures = new(selection.Root);
    private readonly ConcurrentDictionary<string, SourceReading> _failures = new(StringComparer.Ordinal);
    private readonly Lazy<SourceReading> _standardInput = new(() =>
    {
        try
        {
            using var input = openInput();
            return SourceBytes.Read(input);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return new SourceReading(null, SourceOutcome.Unreadable, failure.Message);
        }
    });

    /// <summary>The files that the user asked about.</summary>
    public SourceSelection Selection => selection;

    /// <summary>What came of every file that was read so far.</summary>
    public IReadOnlyDictionary<string, SourceReading> Readings => _readings;

    /// <summary>Every picture that was looked for so far.</summary>
    public IReadOnlyDictionary<string, FigureFile> Figures => _figures.Found;

    /// <inheritdoc/>
    public IReadOnlyList<string> Paths => selection.Paths;

    /// <inheritdoc/>
    public bool IsWhole => selection.IsWhole;

    /// <summary>Whether a file that the user asked about could not be read.</summary>
    public bool HasUnreadableInput => _readings.Any(read => read.Value.Content is null && selection.IsGiven(read.Key));

    /// <summary>Whether a file, by its full path, is one that was asked about or read.</summary>
    public bool IsInput(string path)
    {
        var comparison = OperatingSystem.IsLinux() ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase;
        var real = RealPath.Of(path);
        return selection.Paths.Concat(_readings.Where(read => read.Value.Outcome != SourceOutcome.Missing).Select(read => read.Key))
            .Where(one => one != selection.StandardInput)
            .Any(one => string.Equals(real, RealPath.Of(Path.Combine(selection.Root, one)), comparison));
    }

    /// <summary>Stops a command that changes files when it could not read one of them.</summary>
    /// <exception cref="UsageException">A file that the user asked about could not be read.</exception>
    public void RefuseUnreadable()
    {
        if (_failures.Keys.Where(selection.IsGiven).Order(StringComparer.Ordinal).FirstOrDefault() is { } path)
        {
            throw Refused(path, _failures[path]);
        }
    }

    /// <summary>What is told of a file that has to be read and cannot be.</summary>
    public static UsageException Refused(string path, SourceReading reading) => new($"cannot read '{path}': " + reading.Outcome switch
    {
        SourceOutcome.LeadsOut => "it is a link that leads out of the library; put the file itself there.",
        SourceOutcome.Special => "it is a device, a pipe or a socket, and no file; use '-' for the standard input.",
        _ => reading.Detail.Length == 0 ? "it is gone." : reading.Detail,
    });

    /// <inheritdoc/>
    public SourceReading Read(string path) => _readings.GetOrAdd(path, ReadAnew);

    /// <inheritdoc/>
    public FigureFile FindFigure(string path) => _figures.Find(path);

    private SourceReading ReadAnew(string path)
    {
        var reading = path == selection.StandardInput ? _standardInput.Value : _disk.Read(path);
        if (reading.Content is null && reading.Outcome is not (SourceOutcome.NotText or SourceOutcome.TooLarge))
        {
            _failures.TryAdd(path, reading);
        }

        return reading;
    }
}
