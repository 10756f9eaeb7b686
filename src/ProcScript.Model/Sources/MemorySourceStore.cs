using System.Collections.Immutable;
using System.Text;
using ProcScript.Model.Figures;

namespace ProcScript.Model.Sources;

/// <summary>Sources held in memory: a test's strings, a rule page's sample, the standard input.</summary>
public sealed class MemorySourceStore : ISourceStore
{
    private readonly ImmutableSortedDictionary<string, string> _files;
    private readonly ImmutableArray<string> _paths;
    private readonly ImmutableDictionary<string, FigureFile> _figures;

    /// <summary>
    /// A store of these files, by root-relative path. Backslashes, <c>.</c> and <c>..</c> are resolved; of two spellings of one path the
    /// last wins. JSON and pictures are no sources: they are there for whoever asks for them.
    /// </summary>
    public MemorySourceStore(IEnumerable<KeyValuePair<string, string>> files)
    {
        var byPath = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (path, content) in files)
        {
            byPath[LibraryPath.Normalize(path) ?? path] = content;
        }

        _files = byPath.ToImmutable();
        _figures = _files.Where(file => FigureFormats.ByName(file.Key) is not null)
            .ToImmutableDictionary(file => file.Key, file => FigureFile.Of(Encoding.UTF8.GetBytes(file.Value)), StringComparer.Ordinal);
        _paths = [.. _files.Keys.Where(path => !path.EndsWith(".json", StringComparison.Ordinal) && !path.EndsWith(".xlf", StringComparison.Ordinal) && !_figures.ContainsKey(path))];
    }

    /// <summary>A store of one file.</summary>
    public static MemorySourceStore Of(string path, string content) => new([KeyValuePair.Create(path, content)]);

    /// <inheritdoc/>
    public bool IsWhole => true;

    /// <inheritdoc/>
    public IReadOnlyList<string> Paths => _paths;

    /// <inheritdoc/>
    public FigureFile FindFigure(string path) => _figures.GetValueOrDefault(path, FigureFile.Missing);

    /// <inheritdoc/>
    public SourceReading Read(string path) =>
        _files.TryGetValue(path, out var content)
            ? new SourceReading(content, SourceOutcome.Read)
            : new SourceReading(null, SourceOutcome.Missing);
}
