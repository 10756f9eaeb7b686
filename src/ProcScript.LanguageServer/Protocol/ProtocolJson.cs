using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>How the messages are written: generated, so that nothing is found by reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(JsonElement))]
[JsonSerializable(typeof(InitializeParams))]
[JsonSerializable(typeof(InitializeResult))]
[JsonSerializable(typeof(InitializedParams))]
[JsonSerializable(typeof(DidChangeWorkspaceFoldersParams))]
[JsonSerializable(typeof(DidOpenTextDocumentParams))]
[JsonSerializable(typeof(DidChangeTextDocumentParams))]
[JsonSerializable(typeof(DidCloseTextDocumentParams))]
[JsonSerializable(typeof(DidChangeWatchedFilesParams))]
[JsonSerializable(typeof(RenameFilesParams))]
[JsonSerializable(typeof(CreateFilesParams))]
[JsonSerializable(typeof(DeleteFilesParams))]
[JsonSerializable(typeof(RegistrationParams))]
[JsonSerializable(typeof(PublishDiagnosticsParams))]
[JsonSerializable(typeof(ImmutableArray<Diagnostic>))]
[JsonSerializable(typeof(DocumentDiagnosticParams))]
[JsonSerializable(typeof(DocumentDiagnosticReport))]
[JsonSerializable(typeof(WorkspaceDiagnosticParams))]
[JsonSerializable(typeof(WorkspaceDiagnosticReport))]
[JsonSerializable(typeof(LogMessageParams))]
[JsonSerializable(typeof(TextDocumentPositionParams))]
[JsonSerializable(typeof(ReferenceParams))]
[JsonSerializable(typeof(DocumentParams))]
[JsonSerializable(typeof(WorkspaceSymbolParams))]
[JsonSerializable(typeof(SelectionRangeParams))]
[JsonSerializable(typeof(RenameParams))]
[JsonSerializable(typeof(PrepareRenameResult))]
[JsonSerializable(typeof(DocumentFormattingParams))]
[JsonSerializable(typeof(DocumentRangeFormattingParams))]
[JsonSerializable(typeof(DocumentOnTypeFormattingParams))]
[JsonSerializable(typeof(LinkedEditingRanges))]
[JsonSerializable(typeof(CodeActionParams))]
[JsonSerializable(typeof(WorkspaceEdit))]
[JsonSerializable(typeof(ImmutableArray<Location>))]
[JsonSerializable(typeof(ImmutableArray<DocumentHighlight>))]
[JsonSerializable(typeof(ImmutableArray<DocumentLink>))]
[JsonSerializable(typeof(ImmutableArray<DocumentSymbol>))]
[JsonSerializable(typeof(ImmutableArray<SymbolInformation>))]
[JsonSerializable(typeof(ImmutableArray<FoldingRange>))]
[JsonSerializable(typeof(ImmutableArray<SelectionRange>))]
[JsonSerializable(typeof(ImmutableArray<TextEdit>))]
[JsonSerializable(typeof(ImmutableArray<CodeAction>))]
[JsonSerializable(typeof(Hover))]
[JsonSerializable(typeof(CompletionList))]
[JsonSerializable(typeof(ImmutableArray<CodeLens>))]
[JsonSerializable(typeof(ExecuteCommandParams))]
[JsonSerializable(typeof(WrittenView))]
[JsonSerializable(typeof(ShowDocumentParams))]
[JsonSerializable(typeof(StepPlaces))]
[JsonSerializable(typeof(SemanticTokens))]
[JsonSerializable(typeof(InlayHintParams))]
[JsonSerializable(typeof(ImmutableArray<InlayHint>))]
[JsonSerializable(typeof(SignatureHelp))]
[JsonSerializable(typeof(CallHierarchyCallsParams))]
[JsonSerializable(typeof(ImmutableArray<CallHierarchyItem>?))]
[JsonSerializable(typeof(ImmutableArray<CallHierarchyIncomingCall>))]
[JsonSerializable(typeof(ImmutableArray<CallHierarchyOutgoingCall>))]
internal sealed partial class ProtocolJson : JsonSerializerContext
{
    /// <summary>The options for the connection.</summary>
    public static JsonSerializerOptions ForConnection() => new()
    {
        TypeInfoResolver = Default,
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };
}
