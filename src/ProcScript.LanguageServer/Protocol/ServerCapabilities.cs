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

    /// <summary>Folders that come and go.</summary>
    public required WorkspaceOptions Workspace { get; init; }
}

/// <summary>How documents are kept in step.</summary>
internal sealed record TextDocumentSyncOptions(bool OpenClose, int Change)
{
    /// <summary>Only what changed is sent.</summary>
    public const int Incremental = 2;
}

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
