using System.Collections.Immutable;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>Asks for everything that means the same.</summary>
internal sealed record ReferenceParams(TextDocumentIdentifier TextDocument, Position Position, ReferenceContext Context);

/// <summary>Whether declarations are wanted too.</summary>
internal sealed record ReferenceContext(bool IncludeDeclaration);

/// <summary>A place in the same document: 2 reads, 3 writes.</summary>
internal sealed record DocumentHighlight(Range Range, int Kind);

/// <summary>Asks about a whole document.</summary>
internal sealed record DocumentParams(TextDocumentIdentifier TextDocument);

/// <summary>A symbol of a document with those inside it.</summary>
internal sealed record DocumentSymbol(string Name, string Detail, int Kind, Range Range, Range SelectionRange, ImmutableArray<DocumentSymbol> Children);

/// <summary>Asks for symbols by part of their names.</summary>
internal sealed record WorkspaceSymbolParams(string Query);

/// <summary>A symbol of the workspace.</summary>
internal sealed record SymbolInformation(string Name, int Kind, Location Location, string ContainerName);

/// <summary>Lines that can be folded away.</summary>
internal sealed record FoldingRange(int StartLine, int EndLine, string? Kind);

/// <summary>Asks for what lies around some positions.</summary>
internal sealed record SelectionRangeParams(TextDocumentIdentifier TextDocument, ImmutableArray<Position> Positions);

/// <summary>A range and the next larger one.</summary>
internal sealed record SelectionRange(Range Range, SelectionRange? Parent);

/// <summary>A stretch that leads to another document.</summary>
internal sealed record DocumentLink(Range Range, string Target);
