using System.Collections.Concurrent;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Jobs.Freezing;

/// <summary>A part of a library, which notes what is read of it.</summary>
/// <param name="library">The library.</param>
/// <param name="paths">The files to start from.</param>
internal sealed class NotedLibrary(ISourceStore library, IReadOnlyList<string> paths) : ISourceStore
{
    private readonly ConcurrentDictionary<string, string> _texts = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, FigureFile> _figures = new(StringComparer.Ordinal);

    /// <summary>The texts that were read, by their paths.</summary>
    public IReadOnlyDictionary<string, string> Texts => _texts;

    /// <summary>The pictures that were looked for, by their paths.</summary>
    public IReadOnlyDictionary<string, FigureFile> Figures => _figures;

    /// <inheritdoc/>
    public IReadOnlyList<string> Paths => paths;

    /// <inheritdoc/>
    public SourceReading Read(string path)
    {
        var reading = library.Read(path);
        if (reading.Content is { } text)
        {
            _texts.TryAdd(path, text);
        }

        return reading;
    }

    /// <inheritdoc/>
    public FigureFile FindFigure(string path) => _figures.GetOrAdd(path, library.FindFigure);
}
