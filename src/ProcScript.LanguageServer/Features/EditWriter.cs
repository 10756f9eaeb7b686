using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using SourceEdit = ProcScript.Syntax.Findings.TextEdit;

namespace ProcScript.LanguageServer.Features;

/// <summary>Writes edits of sources as the client takes them.</summary>
/// <param name="client">What it takes.</param>
internal sealed class EditWriter(ClientProfile client)
{
    /// <summary>Edits of any files of a library.</summary>
    public WorkspaceEdit Write(LibraryAnalysis analysis, IEnumerable<SourceEdit> edits)
    {
        var files = edits.GroupBy(edit => edit.Place.Path, StringComparer.Ordinal)
            .Select(file => (Path: file.Key, Edits: file.Select(edit => Write(analysis, edit)).ToImmutableArray()))
            .OrderBy(file => file.Path, StringComparer.Ordinal);
        return client.TakesDocumentChanges
            ? new WorkspaceEdit { DocumentChanges = [.. files.Select(file => new TextDocumentEdit(Identify(analysis, file.Path), file.Edits))] }
            : new WorkspaceEdit { Changes = files.ToImmutableSortedDictionary(file => analysis.Files.UriOf(file.Path), file => file.Edits, StringComparer.Ordinal) };
    }

    /// <summary>One edit.</summary>
    public static TextEdit Write(LibraryAnalysis analysis, SourceEdit edit) => new(analysis.LocationOf(edit.Place).Range, edit.NewText);

    private static OptionalVersionedTextDocumentIdentifier Identify(LibraryAnalysis analysis, string path) =>
        new(analysis.Files.UriOf(path), analysis.Files.Open.GetValueOrDefault(path)?.Version);
}
