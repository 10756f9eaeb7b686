using System.Collections.Concurrent;
using System.Collections.Frozen;
using ProcScript.Cli.Sources;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Versions;

/// <summary>A library as it was at a commit, in memory.</summary>
/// <param name="files">The bytes of its sources, settings and pictures, by path.</param>
/// <param name="isGiven">Which of them the user asked about.</param>
internal sealed class GitSources(FrozenDictionary<string, byte[]> files, Predicate<string> isGiven) : ISourceStore
{
    private readonly ConcurrentDictionary<string, FigureFile> _figures = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public IReadOnlyList<string> Paths { get; } = [.. files.Keys.Where(path => isGiven(path) && ProcFiles.IsSource(path)).Order(StringComparer.Ordinal)];

    /// <inheritdoc/>
    public FigureFile FindFigure(string path) => _figures.GetOrAdd(path, one => files.TryGetValue(one, out var bytes) ? FigureFile.Of(bytes) : FigureFile.Missing);

    /// <inheritdoc/>
    public SourceReading Read(string path) => files.TryGetValue(path, out var bytes)
        ? SourceBytes.Read(new MemoryStream(bytes))
        : new SourceReading(null, SourceOutcome.Missing);
}
