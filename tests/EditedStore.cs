using ProcScript.Model.Figures;
using ProcScript.Model.Sources;
using ProcScript.Syntax;

namespace ProcScript.Tests;

/// <summary>The files of a library as an editor holds them: what has not changed is not parsed again.</summary>
internal sealed class EditedStore(MemorySourceStore files, ParsedFiles parsed) : IParsedSourceStore
{
    /// <inheritdoc/>
    public IReadOnlyList<string> Paths => files.Paths;

    /// <inheritdoc/>
    public bool IsWhole => files.IsWhole;

    /// <inheritdoc/>
    public SourceReading Read(string path) => files.Read(path);

    /// <inheritdoc/>
    public FigureFile FindFigure(string path) => files.FindFigure(path);

    /// <inheritdoc/>
    public SyntaxTree Parse(string path, string content) => parsed.Parse(path, content);

    /// <inheritdoc/>
    public IReadOnlyCollection<string>? ChangesSince(ISourceStore before) =>
        Paths.SequenceEqual(before.Paths) ? [.. Paths.Where(path => Read(path) != before.Read(path))] : null;
}
