using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Model;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;
using ProcScript.Syntax;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>The files of a library at one moment: the open documents over what is on the disk. It never changes.</summary>
internal sealed class LibraryFiles : IParsedSourceStore
{
    /// <summary>The root folder; empty where the library is one document that lies on no disk.</summary>
    public required string Root { get; init; }

    /// <summary>The files that are checked for their own sake, in order.</summary>
    public required ImmutableSortedSet<string> Listed { get; init; }

    /// <inheritdoc/>
    public bool IsWhole { get; init; }

    /// <summary>The day at this moment.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>The open documents by path.</summary>
    public required ImmutableDictionary<string, OpenDocument> Open { get; init; }

    /// <summary>What was read of the disk.</summary>
    public required DiskReadings Disk { get; init; }

    /// <summary>What is kept from one moment to the next.</summary>
    public required LibraryMemory Memory { get; init; }

    /// <inheritdoc/>
    public IReadOnlyList<string> Paths => Listed;

    /// <inheritdoc/>
    public SourceReading Read(string path) => Open.TryGetValue(path, out var document)
        ? new SourceReading(document.Text, SourceOutcome.Read)
        : Root.Length == 0 ? new SourceReading(null, SourceOutcome.Missing) : Disk.Read(path);

    /// <inheritdoc/>
    public FigureFile FindFigure(string path) => Root.Length == 0 ? FigureFile.Missing : Disk.FindFigure(path);

    /// <inheritdoc/>
    public SyntaxTree Parse(string path, string content) => Memory.Files.Parse(path, content);

    /// <inheritdoc/>
    public IReadOnlyCollection<string>? ChangesSince(ISourceStore before) =>
        before is LibraryFiles files && ReferenceEquals(files.Disk, Disk) && ReferenceEquals(files.Listed, Listed)
            ? [.. Open.Except(files.Open).Concat(files.Open.Except(Open)).Select(document => document.Key).Distinct(StringComparer.Ordinal)]
            : null;

    /// <summary>Binds them, with what is remembered of the last time.</summary>
    public Library Bind(CancellationToken cancellation) => LibraryBinder.Bind(this, Memory.Binding, cancellation);

    /// <summary>Checks what they were bound to, as the command line does, with what is remembered of earlier checks.</summary>
    public LibraryReport Check(Library library, CancellationToken cancellation)
    {
        var settings = Memory.SettingsOf(this);
        return LibraryCheck.Run(library, settings, Memory.Checks, cancellation);
    }

    /// <summary>The address of a file.</summary>
    public string UriOf(string path) =>
        Open.TryGetValue(path, out var document) ? document.Uri : Memory.Uris.GetOrAdd(path, static (inside, root) => DocumentUri.FromPath(Path.Combine(root, inside)), Root);
}
