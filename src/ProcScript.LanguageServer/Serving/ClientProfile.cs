using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Serving;

/// <summary>What the client said of itself, as the server asks about it.</summary>
/// <param name="parameters">What it said.</param>
internal sealed class ClientProfile(InitializeParams parameters)
{
    private readonly ClientCapabilities _capabilities = parameters.Capabilities ?? new ClientCapabilities();

    /// <summary>How characters are counted: in bytes where the client offers it, since that needs no look at the text for ASCII.</summary>
    public PositionEncoding Encoding =>
        _capabilities.General?.PositionEncodings is { } offered && offered.Contains(PositionEncodings.Utf8) ? PositionEncoding.Utf8 : PositionEncoding.Utf16;

    /// <summary>The folders that it shows, as full paths.</summary>
    public ImmutableArray<string> Folders =>
    [
        .. parameters.WorkspaceFolders?.Select(folder => folder.Uri).Select(DocumentUri.ToPath).OfType<string>() ?? OneFolder,
    ];

    /// <summary>What an older client shows: one folder, by its address, or by its path before addresses were agreed on.</summary>
    private IEnumerable<string> OneFolder =>
        parameters.RootUri is { } root ? new[] { DocumentUri.ToPath(root) }.OfType<string>() : parameters.RootPath is { Length: > 0 } path ? [path] : [];

    /// <summary>Whether it knows symbols within symbols.</summary>
    public bool TakesNestedSymbols => _capabilities.TextDocument?.DocumentSymbol?.HierarchicalDocumentSymbolSupport ?? false;

    /// <summary>Whether it asks for findings; then it is told none.</summary>
    public bool PullsDiagnostics => _capabilities.TextDocument?.Diagnostic is not null;

    /// <summary>Whether it asks for all findings again when told to.</summary>
    public bool RefreshesDiagnostics => PullsDiagnostics && (_capabilities.Workspace?.Diagnostics?.RefreshSupport ?? false);

    /// <summary>The requests by which it is told to ask again for what it shows within and above the lines of documents.</summary>
    public ImmutableArray<string> Refreshes =>
    [
        .. _capabilities.Workspace?.SemanticTokens?.RefreshSupport == true ? ["workspace/semanticTokens/refresh"] : Array.Empty<string>(),
        .. _capabilities.Workspace?.InlayHint?.RefreshSupport == true ? ["workspace/inlayHint/refresh"] : Array.Empty<string>(),
        .. _capabilities.Workspace?.CodeLens?.RefreshSupport == true ? ["workspace/codeLens/refresh"] : Array.Empty<string>(),
    ];

    /// <summary>Whether it shows where a rule is explained.</summary>
    public bool TakesCodeDescriptions => PullsDiagnostics || (_capabilities.TextDocument?.PublishDiagnostics?.CodeDescriptionSupport ?? false);

    /// <summary>Whether it watches files when asked.</summary>
    public bool WatchesFiles => _capabilities.Workspace?.DidChangeWatchedFiles?.DynamicRegistration ?? false;

    /// <summary>Whether edits may name the versions that they are for.</summary>
    public bool TakesDocumentChanges => _capabilities.Workspace?.WorkspaceEdit?.DocumentChanges ?? false;

    /// <summary>Whether completions may have places to fill in.</summary>
    public bool TakesSnippets => _capabilities.TextDocument?.Completion?.CompletionItem?.SnippetSupport ?? false;

    /// <summary>Whether it shows a document when asked.</summary>
    public bool ShowsDocuments => _capabilities.Window?.ShowDocument?.Support ?? false;
}
