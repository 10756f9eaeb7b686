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
    private readonly DiskFigures _figures = new(selection.Root);
    private readonly ConcurrentDictionary<string, SourceReading> _failures = new(StringComparer.Ordinal);
    private readonly Lazy<SourceReading> _standardInput = new(() =>
    {
        using var input = openInput();
        return SourceBytes.Read(input);
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
    public bool HasUnreadableInput => _failures.Keys.Any(selection.IsGiven);

    /// <summary>Stops a command that changes files when it could not read one of them.</summary>
    /// <exception cref="UsageException">A file that the user asked about could not be read.</exception>
    public void RefuseUnreadable()
    {
        if (_failures.Keys.Where(selection.IsGiven).Order(StringComparer.Ordinal).FirstOrDefault() is { } path)
        {
            var detail = _failures[path].Detail;
            throw new UsageException($"cannot read '{path}': {(detail.Length == 0 ? "it is gone." : detail)}");
        }
    }

    /// <inheritdoc/>
    public SourceReading Read(string path) => _readings.GetOrAdd(path, ReadAnew);

    /// <inheritdoc/>
    public FigureFile FindFigure(string path) => _figures.Find(path);

    private SourceReading ReadAnew(string path)
    {
        var reading = path == selection.StandardInput ? _standardInput.Value
            : path.Contains('\0') ? new SourceReading(null, SourceOutcome.Missing)
            : SourceBytes.ReadFile(Path.Combine(selection.Root, path));
        if (reading.Outcome is SourceOutcome.Missing or SourceOutcome.Unreadable)
        {
            _failures.TryAdd(path, reading);
        }

        return reading;
    }
}
