using System.Collections.Immutable;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>What the server is and can do.</summary>
internal sealed record InitializeResult(ServerCapabilities Capabilities, ServerInfo ServerInfo);

/// <summary>What the server is.</summary>
internal sealed record ServerInfo(string Name, string Version);

/// <summary>What the server can do. Only what answers stands here.</summary>
internal sealed record ServerCapabilities
{
    /// <summary>How characters are counted.</summary>
    public required string PositionEncoding { get; init; }

    /// <summary>How documents are kept in step.</summary>
    public required TextDocumentSyncOptions TextDocumentSync { get; init; }

    /// <summary>Findings that the client asks for; null where it is told.</summary>
    public DiagnosticOptions? DiagnosticProvider { get; init; }

    /// <summary>What a word means.</summary>
    public bool HoverProvider { get; init; }

    /// <summary>What could be written.</summary>
    public required CompletionOptions CompletionProvider { get; init; }

    /// <summary>What a call takes.</summary>
    public required SignatureHelpOptions SignatureHelpProvider { get; init; }

    /// <summary>Who calls whom.</summary>
    public bool CallHierarchyProvider { get; init; }

    /// <summary>What each word is.</summary>
    public required SemanticTokensOptions SemanticTokensProvider { get; init; }

    /// <summary>Words within lines that nobody wrote.</summary>
    public bool InlayHintProvider { get; init; }

    /// <summary>Lines above procedures.</summary>
    public required CodeLensOptions CodeLensProvider { get; init; }

    /// <summary>The views.</summary>
    public required ExecuteCommandOptions ExecuteCommandProvider { get; init; }

    /// <summary>From a word to what it means.</summary>
    public bool DefinitionProvider { get; init; }

    /// <summary>From a word to all that mean the same.</summary>
    public bool ReferencesProvider { get; init; }

    /// <summary>The same within the document.</summary>
    public bool DocumentHighlightProvider { get; init; }

    /// <summary>From <c>use</c> lines to the files.</summary>
    public required DocumentLinkOptions DocumentLinkProvider { get; init; }

    /// <summary>Other names.</summary>
    public required RenameOptions RenameProvider { get; init; }

    /// <summary>The outline.</summary>
    public bool DocumentSymbolProvider { get; init; }

    /// <summary>A search for names.</summary>
    public bool WorkspaceSymbolProvider { get; init; }

    /// <summary>The layout of a document.</summary>
    public bool DocumentFormattingProvider { get; init; }

    /// <summary>The layout of a stretch.</summary>
    public bool DocumentRangeFormattingProvider { get; init; }

    /// <summary>The layout of a block that is closed.</summary>
    public required DocumentOnTypeFormattingOptions DocumentOnTypeFormattingProvider { get; init; }

    /// <summary>A name and its uses, changed as one.</summary>
    public bool LinkedEditingRangeProvider { get; init; }

    /// <summary>What can be folded away.</summary>
    public bool FoldingRangeProvider { get; init; }

    /// <summary>What lies around a position.</summary>
    public bool SelectionRangeProvider { get; init; }

    /// <summary>What can be done about a finding.</summary>
    public required CodeActionOptions CodeActionProvider { get; init; }

    /// <summary>Folders that come and go.</summary>
    public required WorkspaceOptions Workspace { get; init; }
}

/// <summary>How documents are kept in step.</summary>
internal sealed record TextDocumentSyncOptions(bool OpenClose, int Change)
{
    /// <summary>Only what changed is sent.</summary>
    public const int Incremental = 2;
}

/// <summary>At which letter a layout is asked for.</summary>
internal sealed record DocumentOnTypeFormattingOptions(string FirstTriggerCharacter);

/// <summary>Findings that the client asks for.</summary>
internal sealed record DiagnosticOptions(string Identifier, bool InterFileDependencies, bool WorkspaceDiagnostics);

/// <summary>What the server does of the workspace.</summary>
internal sealed record WorkspaceOptions(WorkspaceFoldersServerCapabilities WorkspaceFolders)
{
    /// <summary>What it wants to hear of files.</summary>
    public FileOperationOptions? FileOperations { get; init; }
}

/// <summary>What the server does of folders.</summary>
internal sealed record WorkspaceFoldersServerCapabilities(bool Supported, bool ChangeNotifications);

/// <summary>What the server wants to hear of files.</summary>
internal sealed record FileOperationOptions
{
    /// <summary>Before files are renamed: it answers with the edits that their users need.</summary>
    public FileOperationRegistrationOptions? WillRename { get; init; }

    /// <summary>After files were renamed.</summary>
    public FileOperationRegistrationOptions? DidRename { get; init; }

    /// <summary>After files were made.</summary>
    public FileOperationRegistrationOptions? DidCreate { get; init; }

    /// <summary>After files were deleted.</summary>
    public FileOperationRegistrationOptions? DidDelete { get; init; }
}

/// <summary>Which files.</summary>
internal sealed record FileOperationRegistrationOptions(ImmutableArray<FileOperationFilter> Filters);

/// <summary>Which files.</summary>
internal sealed record FileOperationFilter(FileOperationPattern Pattern);

/// <summary>Which files.</summary>
internal sealed record FileOperationPattern(string Glob);
