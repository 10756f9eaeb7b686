using System.Collections.Immutable;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>What each word of a document is, five numbers a word.</summary>
internal sealed record SemanticTokens(ImmutableArray<int> Data);

/// <summary>The names of the sorts of words.</summary>
internal sealed record SemanticTokensLegend(ImmutableArray<string> TokenTypes, ImmutableArray<string> TokenModifiers);

/// <summary>That words are told for whole documents.</summary>
internal sealed record SemanticTokensOptions(SemanticTokensLegend Legend, bool Full);

/// <summary>Asks for the hints of a stretch.</summary>
internal sealed record InlayHintParams(TextDocumentIdentifier TextDocument, Range Range);

/// <summary>A few words within a line that nobody wrote.</summary>
internal sealed record InlayHint(Position Position, string Label, bool PaddingLeft);

/// <summary>What a call takes.</summary>
internal sealed record SignatureHelp(ImmutableArray<SignatureInformation> Signatures, int ActiveSignature, int ActiveParameter);

/// <summary>What one procedure takes.</summary>
internal sealed record SignatureInformation(string Label, ImmutableArray<ParameterInformation> Parameters);

/// <summary>One parameter, as a part of the label.</summary>
internal sealed record ParameterInformation(string Label);

/// <summary>When to ask what a call takes.</summary>
internal sealed record SignatureHelpOptions(ImmutableArray<string> TriggerCharacters);

/// <summary>A procedure among those that call each other.</summary>
internal sealed record CallHierarchyItem(string Name, int Kind, string Uri, Range Range, Range SelectionRange);

/// <summary>Asks who calls a procedure, or whom it calls.</summary>
internal sealed record CallHierarchyCallsParams(CallHierarchyItem Item);

/// <summary>A caller and where it calls.</summary>
internal sealed record CallHierarchyIncomingCall(CallHierarchyItem From, ImmutableArray<Range> FromRanges);

/// <summary>One that is called and where.</summary>
internal sealed record CallHierarchyOutgoingCall(CallHierarchyItem To, ImmutableArray<Range> FromRanges);
