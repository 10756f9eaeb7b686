using System.Collections.Immutable;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>What a client says of itself.</summary>
internal sealed record InitializeParams
{
    /// <summary>The process that the server serves: its end is the server's end.</summary>
    public int? ProcessId { get; init; }

    /// <summary>The folder that an older client shows.</summary>
    public string? RootUri { get; init; }

    /// <summary>The path of it, from a client that knows no addresses of folders.</summary>
    public string? RootPath { get; init; }

    /// <summary>What the client can do.</summary>
    public ClientCapabilities? Capabilities { get; init; }

    /// <summary>The folders that it shows.</summary>
    public ImmutableArray<WorkspaceFolder>? WorkspaceFolders { get; init; }
}

/// <summary>A folder that the client shows.</summary>
internal sealed record WorkspaceFolder(string Uri, string Name);

/// <summary>The folders that came and went.</summary>
internal sealed record WorkspaceFoldersChangeEvent(ImmutableArray<WorkspaceFolder> Added, ImmutableArray<WorkspaceFolder> Removed);

/// <summary>The folders that came and went.</summary>
internal sealed record DidChangeWorkspaceFoldersParams(WorkspaceFoldersChangeEvent Event);

/// <summary>What the client can do, as far as this server asks.</summary>
internal sealed record ClientCapabilities
{
    /// <summary>Of the connection.</summary>
    public GeneralClientCapabilities? General { get; init; }

    /// <summary>Of the workspace.</summary>
    public WorkspaceClientCapabilities? Workspace { get; init; }

    /// <summary>Of one document.</summary>
    public TextDocumentClientCapabilities? TextDocument { get; init; }

    /// <summary>Of its windows.</summary>
    public WindowClientCapabilities? Window { get; init; }
}

/// <summary>What the client can do, of the connection.</summary>
internal sealed record GeneralClientCapabilities
{
    /// <summary>What it says.</summary>
    public ImmutableArray<string>? PositionEncodings { get; init; }
}

/// <summary>What the client can do, of its windows.</summary>
internal sealed record WindowClientCapabilities
{
    /// <summary>What it says.</summary>
    public ShowDocumentClientCapabilities? ShowDocument { get; init; }
}

/// <summary>Whether the client shows a document when asked.</summary>
internal sealed record ShowDocumentClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool Support { get; init; }
}

/// <summary>What the client can do, of the workspace.</summary>
internal sealed record WorkspaceClientCapabilities
{
    /// <summary>Of edits.</summary>
    public WorkspaceEditClientCapabilities? WorkspaceEdit { get; init; }

    /// <summary>Of files that change on the disk.</summary>
    public DidChangeWatchedFilesClientCapabilities? DidChangeWatchedFiles { get; init; }

    /// <summary>Of semantic tokens.</summary>
    public SemanticTokensWorkspaceClientCapabilities? SemanticTokens { get; init; }

    /// <summary>Of inlay hints.</summary>
    public InlayHintWorkspaceClientCapabilities? InlayHint { get; init; }

    /// <summary>Of code lenses.</summary>
    public CodeLensWorkspaceClientCapabilities? CodeLens { get; init; }

    /// <summary>Of findings that the client asks for.</summary>
    public DiagnosticWorkspaceClientCapabilities? Diagnostics { get; init; }
}

/// <summary>What the client can do, of edits.</summary>
internal sealed record WorkspaceEditClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool? DocumentChanges { get; init; }
}

/// <summary>Whether the client watches files when asked.</summary>
internal sealed record DidChangeWatchedFilesClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool? DynamicRegistration { get; init; }
}

/// <summary>Whether the client asks again when told to.</summary>
internal sealed record SemanticTokensWorkspaceClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool? RefreshSupport { get; init; }
}

/// <summary>Whether the client asks again when told to.</summary>
internal sealed record InlayHintWorkspaceClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool? RefreshSupport { get; init; }
}

/// <summary>Whether the client asks again when told to.</summary>
internal sealed record CodeLensWorkspaceClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool? RefreshSupport { get; init; }
}

/// <summary>Whether the client asks again when told to.</summary>
internal sealed record DiagnosticWorkspaceClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool? RefreshSupport { get; init; }
}

/// <summary>What the client can do, of one document.</summary>
internal sealed record TextDocumentClientCapabilities
{
    /// <summary>Of findings that it is told.</summary>
    public PublishDiagnosticsClientCapabilities? PublishDiagnostics { get; init; }

    /// <summary>Of findings that it asks for: a client that has this is told none.</summary>
    public DiagnosticClientCapabilities? Diagnostic { get; init; }

    /// <summary>Of the outline.</summary>
    public DocumentSymbolClientCapabilities? DocumentSymbol { get; init; }

    /// <summary>Of completion.</summary>
    public CompletionClientCapabilities? Completion { get; init; }
}

/// <summary>What the client can do, of findings that it is told.</summary>
internal sealed record PublishDiagnosticsClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool? CodeDescriptionSupport { get; init; }
}

/// <summary>What the client can do, of findings that it asks for.</summary>
internal sealed record DiagnosticClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool? RelatedDocumentSupport { get; init; }
}

/// <summary>What the client can do, of the outline.</summary>
internal sealed record DocumentSymbolClientCapabilities
{
    /// <summary>What it says.</summary>
    public bool? HierarchicalDocumentSymbolSupport { get; init; }
}

/// <summary>What the client can do, of completion.</summary>
internal sealed record CompletionClientCapabilities
{
    /// <summary>What it says.</summary>
    public ClientCompletionItemOptions? CompletionItem { get; init; }
}

/// <summary>What the client can do, of a completion item.</summary>
internal sealed record ClientCompletionItemOptions
{
    /// <summary>What it says.</summary>
    public bool? SnippetSupport { get; init; }
}
