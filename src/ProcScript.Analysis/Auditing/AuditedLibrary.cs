using System.Collections.Concurrent;
using ProcScript.Analysis.Checking;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax;

namespace ProcScript.Analysis.Auditing;

/// <summary>A library that is checked with one file changed at a time: what does not see the file is not bound or proven again.</summary>
/// <param name="store">The library as it is.</param>
/// <param name="settings">What the shop has chosen.</param>
internal sealed class AuditedLibrary(ISourceStore store, CheckSettings settings)
{
    private readonly ISourceStore _store = store;
    private readonly ConcurrentDictionary<string, SourceReading> _readings = new(StringComparer.Ordinal);
    private readonly ParsedFiles _parsed = new();
    private readonly BindingMemory _binding = new();
    private readonly CheckMemory _memory = new();

    /// <summary>Checks the library with another text of one file.</summary>
    public LibraryReport Check(string path, string text, CancellationToken cancellation) =>
        LibraryCheck.Run(LibraryBinder.Bind(new Changed(this, path, text), _binding, cancellation), settings, _memory, cancellation);

    private SourceReading Read(string path) => _readings.GetOrAdd(path, _store.Read);

    private sealed class Changed(AuditedLibrary library, string changed, string text) : IParsedSourceStore
    {
        private string ChangedPath { get; } = changed;

        public IReadOnlyList<string> Paths => library._store.Paths;

        public bool IsWhole => library._store.IsWhole;

        public SourceReading Read(string path) => path == ChangedPath ? new SourceReading(text, SourceOutcome.Read) : library.Read(path);

        public SyntaxTree Parse(string path, string content) => library._parsed.Parse(path, content);

        public IReadOnlyCollection<string> ChangesSince(ISourceStore before) => [ChangedPath, ((Changed)before).ChangedPath];

        public Model.Figures.FigureFile FindFigure(string path) => library._store.FindFigure(path);
    }
}
