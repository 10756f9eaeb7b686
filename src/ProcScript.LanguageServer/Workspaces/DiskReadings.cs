using System.Collections.Concurrent;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>What was read of the disk: each file once, until somebody says that it changed.</summary>
/// <param name="host">The disk.</param>
/// <param name="root">The folder that paths start from.</param>
internal sealed class DiskReadings(IServerHost host, string root)
{
    private readonly ConcurrentDictionary<string, SourceReading> _readings = new(StringComparer.Ordinal);

    private readonly ConcurrentDictionary<string, FigureFile> _figures = new(StringComparer.Ordinal);

    /// <summary>The file at a path.</summary>
    public SourceReading Read(string path) => _readings.GetOrAdd(path, one => host.Read(root, one));

    /// <summary>The picture at a path.</summary>
    public FigureFile FindFigure(string path) => _figures.GetOrAdd(path, one => host.FindFigure(root, one));

    /// <summary>Whether somebody asked about a path, whatever was found there.</summary>
    public bool Knows(string path) => _readings.ContainsKey(path) || _figures.ContainsKey(path);

    /// <summary>The same without the files at some paths, which are read anew.</summary>
    public DiskReadings Without(IReadOnlySet<string> paths)
    {
        var others = new DiskReadings(host, root);
        foreach (var (path, reading) in _readings)
        {
            if (!paths.Contains(path))
            {
                others._readings.TryAdd(path, reading);
            }
        }

        foreach (var (path, figure) in _figures)
        {
            if (!paths.Contains(path))
            {
                others._figures.TryAdd(path, figure);
            }
        }

        return others;
    }
}
