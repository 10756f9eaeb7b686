using System.Collections.Immutable;

namespace ProcScript.Model.Sources;

/// <summary>Sources held in memory: a test's strings, a rule page's sample, the standard input.</summary>
public sealed class MemorySourceStore : ISourceStore
{
    private readonly ImmutableSortedDictionary<string, string> _files;
    private readonly ImmutableArray<string> _paths;

    /// <summary>
    /// A store of these files, by root-relative path. Backslashes, <c>.</c> and <c>..</c> are resolved; of two spellings of one path the
    /// last wins. JSON is no source: it is there for whoever asks for it.
    /// </summary>
    public MemorySourceStore(IEnumerable<KeyValuePair<string, string>> files)
    {
        var byPath = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (path, content) in files)
        {
            byPath[LibraryPath.Normalize(path) ?? path] = content;
        }

        _files = byPath.ToImmutable();
        _paths = [.. _files.Keys.Where(path => !path.EndsWith(".json", StringComparison.Ordinal))];
    }

    /// <summary>A store of one file.</summary>
    public static MemorySourceStore Of(string path, string content) => new([KeyValuePair.Create(path, content)]);

    /// <inheritdoc/>
    public bool IsWhole => true;

    /// <inheritdoc/>
    public IReadOnlyList<string> Paths => _paths;

    /// <inheritdoc/>
    public SourceReading Read(string path) =>
        _files.TryGetValue(path, out var content)
            ? new SourceReading(content, SourceOutcome.Read)
            : new SourceReading(null, SourceOutcome.Missing);
}
