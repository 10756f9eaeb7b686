using System.Collections.Immutable;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>A document that was opened, with its text.</summary>
internal sealed record TextDocumentItem(string Uri, string LanguageId, int Version, string Text);

/// <summary>A document was opened.</summary>
internal sealed record DidOpenTextDocumentParams(TextDocumentItem TextDocument);

/// <summary>A document changed; the changes follow one another.</summary>
internal sealed record DidChangeTextDocumentParams(
    VersionedTextDocumentIdentifier TextDocument,
    ImmutableArray<TextDocumentContentChangeEvent> ContentChanges);

/// <summary>One change: of a stretch, or of the whole text where there is none.</summary>
internal sealed record TextDocumentContentChangeEvent(string Text)
{
    /// <summary>The stretch.</summary>
    public Range? Range { get; init; }
}

/// <summary>A document was closed.</summary>
internal sealed record DidCloseTextDocumentParams(TextDocumentIdentifier TextDocument);

/// <summary>Files changed on the disk.</summary>
internal sealed record DidChangeWatchedFilesParams(ImmutableArray<FileEvent> Changes);

/// <summary>A file changed on the disk.</summary>
internal sealed record FileEvent(string Uri, int Type);

/// <summary>Files are renamed.</summary>
internal sealed record RenameFilesParams(ImmutableArray<FileRename> Files);

/// <summary>A file or folder is renamed.</summary>
internal sealed record FileRename(string OldUri, string NewUri);

/// <summary>Files were made.</summary>
internal sealed record CreateFilesParams(ImmutableArray<FileCreate> Files);

/// <summary>A file was made.</summary>
internal sealed record FileCreate(string Uri);

/// <summary>Files were deleted.</summary>
internal sealed record DeleteFilesParams(ImmutableArray<FileDelete> Files);

/// <summary>A file was deleted.</summary>
internal sealed record FileDelete(string Uri);

/// <summary>What the client shall tell the server from now on.</summary>
internal sealed record RegistrationParams(ImmutableArray<Registration> Registrations);

/// <summary>One thing that the client shall tell.</summary>
internal sealed record Registration(string Id, string Method, DidChangeWatchedFilesRegistrationOptions RegisterOptions);

/// <summary>Which files the client shall watch.</summary>
internal sealed record DidChangeWatchedFilesRegistrationOptions(ImmutableArray<FileSystemWatcher> Watchers);

/// <summary>Which files the client shall watch.</summary>
internal sealed record FileSystemWatcher(string GlobPattern);
