using System.Collections.Concurrent;
using System.Collections.Immutable;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Mending;

/// <summary>
/// A library read once, with some texts edited. Trees are kept from one round to the next, so that only what was edited is parsed and
/// proven again.
/// </summary>
/// <param name="store">The library as it stands.</param>
internal sealed class MendSource(ISourceStore store)
{
    private readonly ISourceStore _store = store;
    private readonly ConcurrentDictionary<string, SourceReading> _readings = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<(string Path, string Content), SyntaxTree> _trees = new();

    /// <summary>The library with these texts in place of those that were read.</summary>
    public ISourceStore With(ImmutableSortedDictionary<string, string> edited) => new Edited(this, edited);

    /// <summary>The text of a file as it was read; empty where there is none.</summary>
    public string TextOf(string path) => Read(path).Content ?? "";

    private SourceReading Read(string path) => _readings.GetOrAdd(path, _store.Read);

    private SyntaxTree Parse(string path, string content) =>
        _trees.GetOrAdd((path, content), file => SyntaxTree.Parse(new SourceText(file.Path, file.Content)));

    private sealed class Edited(MendSource source, ImmutableSortedDictionary<string, string> edited) : IParsedSourceStore
    {
        public IReadOnlyList<string> Paths { get; } = [.. source._store.Paths];

        public bool IsWhole => source._store.IsWhole;

        public SourceReading Read(string path) =>
            edited.TryGetValue(path, out var text) ? new SourceReading(text, SourceOutcome.Read) : source.Read(path);

        public FigureFile FindFigure(string path) => source._store.FindFigure(path);

        public SyntaxTree Parse(string path, string content) => source.Parse(path, content);
    }
}
