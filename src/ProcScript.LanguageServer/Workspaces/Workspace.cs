using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>All that is open in the editor. Only the messages of the client change it, one after the other.</summary>
/// <param name="host">The disk.</param>
/// <param name="encoding">What characters of positions count.</param>
/// <param name="listener">Hears of every analysis.</param>
internal sealed class Workspace(IServerHost host, PositionEncoding encoding, IAnalysisListener listener)
{
    private readonly Dictionary<string, ServedLibrary> _libraries = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ServedLibrary> _homes = new(StringComparer.Ordinal);

    /// <summary>What characters of positions count.</summary>
    public PositionEncoding Encoding => encoding;

    /// <summary>The libraries, in the order of their roots.</summary>
    public IEnumerable<ServedLibrary> Libraries => _libraries.OrderBy(library => library.Key, StringComparer.Ordinal).Select(library => library.Value);

    /// <summary>Takes folders in.</summary>
    public void AddFolders(IEnumerable<string> folders)
    {
        foreach (var folder in folders)
        {
            LibraryAt(host.FindRoot(folder)).Add(folder);
        }
    }

    /// <summary>Lets folders go.</summary>
    public void RemoveFolders(IEnumerable<string> folders)
    {
        foreach (var folder in folders)
        {
            LibraryAt(host.FindRoot(folder)).Remove(folder);
        }
    }

    /// <summary>Opens a document.</summary>
    public void Open(TextDocumentItem item)
    {
        var library = HomeOf(item.Uri);
        _homes[item.Uri] = library;
        library.Set(PathIn(library, item.Uri), new OpenDocument(item.Uri, item.Version, item.Text));
    }

    /// <summary>Changes an open document.</summary>
    /// <returns>Whether it is open.</returns>
    public bool Change(VersionedTextDocumentIdentifier identifier, IEnumerable<TextDocumentContentChangeEvent> changes)
    {
        if (!_homes.TryGetValue(identifier.Uri, out var library))
        {
            return false;
        }

        var path = PathIn(library, identifier.Uri);
        library.Set(path, library.Files.Open[path].With(identifier.Version, changes, encoding));
        return true;
    }

    /// <summary>Closes a document.</summary>
    public void Close(string uri)
    {
        if (_homes.Remove(uri, out var library))
        {
            library.Close(PathIn(library, uri));
        }
    }

    /// <summary>Takes note of files that came, went or changed on the disk.</summary>
    public void Changed(IEnumerable<string> uris)
    {
        var paths = uris.Select(DocumentUri.ToPath).OfType<string>().ToList();
        foreach (var library in Libraries.Where(library => library.Files.Root.Length > 0))
        {
            var inside = paths.Where(path => FolderPaths.Holds(library.Files.Root, path)).Select(library.PathOf).ToImmutableHashSet(StringComparer.Ordinal);
            if (!inside.IsEmpty)
            {
                library.Changed(inside);
            }
        }
    }

    /// <summary>The library that a document belongs to, and its path there; null where nothing of it is open.</summary>
    public (ServedLibrary Library, string Path)? Find(string uri)
    {
        var library = _homes.GetValueOrDefault(uri)
            ?? (DocumentUri.ToPath(uri) is { } path ? Libraries.FirstOrDefault(one => one.Holds(path)) : null);
        return library is null ? null : (library, PathIn(library, uri));
    }

    /// <summary>
    /// What a request is about: the document as it is when the request comes. Null where it is not known.
    /// </summary>
    public async Task<Asked?> AskAsync(TextDocumentIdentifier document, CancellationToken cancellation)
    {
        if (Find(document.Uri) is not var (library, path))
        {
            return null;
        }

        var analysis = await library.AnalyseAsync(cancellation).ConfigureAwait(false);
        return analysis.Library.Trees.TryGetValue(path, out var tree) ? new Asked(analysis, path, tree) : null;
    }

    /// <summary>A document that is known, as it is written now: its shape needs no other file, and waits for no check. Null where it is not known.</summary>
    public async Task<WrittenDocument?> ReadAsync(TextDocumentIdentifier document, CancellationToken cancellation)
    {
        if (Find(document.Uri) is not var (library, path))
        {
            return null;
        }

        var files = library.Files;
        return await Task.Run(
            () => files.Read(path).Content is { } text ? new WrittenDocument(document.Uri, path, files.Parse(path, text), encoding) : null,
            cancellation).ConfigureAwait(false);
    }

    /// <summary>
    /// Answers a request that is about what the text says, as soon as that is known; the answer may wait for the verdict all the same.
    /// </summary>
    /// <param name="document">The document; it is meant as it is when the request comes.</param>
    /// <param name="answer">Answers, with the verdict on its way.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The answer; null where the document is not known.</returns>
    public async Task<TAnswer?> AskTextAsync<TAnswer>(
        TextDocumentIdentifier document, Func<Asked, Task, Task<TAnswer?>> answer, CancellationToken cancellation)
        where TAnswer : class
    {
        if (Find(document.Uri) is not var (library, path))
        {
            return null;
        }

        var run = library.Run;
        using var hold = run.Hold();
        var analysis = await run.Bound.WaitAsync(cancellation).ConfigureAwait(false);
        return analysis.Library.Trees.TryGetValue(path, out var tree)
            ? await answer(new Asked(analysis, path, tree), run.Judged.WaitAsync(cancellation)).ConfigureAwait(false)
            : null;
    }

    private static string PathIn(ServedLibrary library, string uri) => library.PathOf(DocumentUri.ToPath(uri) ?? uri);

    /// <summary>The library whose folders hold the document; else the one that the command line would take the file for.</summary>
    private ServedLibrary HomeOf(string uri) => DocumentUri.ToPath(uri) is not { } path
        ? LibraryAt("", uri)
        : Libraries.FirstOrDefault(library => library.Holds(path)) ?? LibraryAt(host.FindRoot(Path.GetDirectoryName(path) ?? path));

    private ServedLibrary LibraryAt(string root, string? key = null)
    {
        if (!_libraries.TryGetValue(key ?? root, out var library))
        {
            _libraries[key ?? root] = library = new ServedLibrary(root, host, encoding, listener);
        }

        return library;
    }
}
