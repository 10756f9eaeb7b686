using ProcScript.LanguageServer.Features;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Serving;

/// <summary>What the server tells a client that it can do: what answers, and nothing else.</summary>
internal static class Capabilities
{
    /// <summary>What is told to this client.</summary>
    public static ServerCapabilities For(ClientProfile client) => new()
    {
        PositionEncoding = PositionEncodings.NameOf(client.Encoding),
        TextDocumentSync = new TextDocumentSyncOptions(OpenClose: true, TextDocumentSyncOptions.Incremental),
        DiagnosticProvider = client.PullsDiagnostics
            ? new DiagnosticOptions("procscript", InterFileDependencies: true, WorkspaceDiagnostics: true)
            : null,
        HoverProvider = true,
        CompletionProvider = new CompletionOptions([" ", "\"", "/", "[", "("]),
        SignatureHelpProvider = new SignatureHelpOptions(["(", ","]),
        CallHierarchyProvider = true,
        SemanticTokensProvider = new SemanticTokensOptions(MarkingMethods.Legend, Full: true),
        InlayHintProvider = true,
        CodeLensProvider = new CodeLensOptions(ResolveProvider: false),
        ExecuteCommandProvider = new ExecuteCommandOptions(ViewMethods.Commands),
        DefinitionProvider = true,
        ReferencesProvider = true,
        DocumentHighlightProvider = true,
        DocumentLinkProvider = new DocumentLinkOptions(ResolveProvider: false),
        RenameProvider = new RenameOptions(PrepareProvider: true),
        DocumentSymbolProvider = true,
        WorkspaceSymbolProvider = true,
        DocumentFormattingProvider = true,
        DocumentRangeFormattingProvider = true,
        DocumentOnTypeFormattingProvider = new DocumentOnTypeFormattingOptions("}"),
        LinkedEditingRangeProvider = true,
        FoldingRangeProvider = true,
        SelectionRangeProvider = true,
        CodeActionProvider = new CodeActionOptions([CodeAction.QuickFix, CodeAction.Rewrite, CodeAction.Extract, CodeAction.FixAll, CodeAction.Show]),
        Workspace = new WorkspaceOptions(new WorkspaceFoldersServerCapabilities(Supported: true, ChangeNotifications: true))
        {
            FileOperations = new FileOperationOptions { WillRename = Sources, DidRename = Sources, DidCreate = Sources, DidDelete = Sources },
        },
    };

    private static FileOperationRegistrationOptions Sources { get; } =
        new([new FileOperationFilter(new FileOperationPattern("**/*.proc")), new FileOperationFilter(new FileOperationPattern("**/"))]);
}
