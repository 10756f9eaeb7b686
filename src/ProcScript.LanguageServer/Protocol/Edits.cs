using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>An edit of one document.</summary>
internal sealed record TextEdit(Range Range, string NewText);

/// <summary>A document whose version may not be known: null where it is not open.</summary>
internal sealed record OptionalVersionedTextDocumentIdentifier(
    string Uri,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.Never)] int? Version);

/// <summary>Edits of one document in one version.</summary>
internal sealed record TextDocumentEdit(OptionalVersionedTextDocumentIdentifier TextDocument, ImmutableArray<TextEdit> Edits);

/// <summary>Edits of several documents: with versions where the client takes them, else by address.</summary>
internal sealed record WorkspaceEdit
{
    /// <summary>The edits by address.</summary>
    public ImmutableSortedDictionary<string, ImmutableArray<TextEdit>>? Changes { get; init; }

    /// <summary>The edits with the versions that they are for.</summary>
    public ImmutableArray<TextDocumentEdit>? DocumentChanges { get; init; }
}

/// <summary>Asks for the layout of what a letter has closed.</summary>
internal sealed record DocumentOnTypeFormattingParams(TextDocumentIdentifier TextDocument, Position Position, string Ch);

/// <summary>Places that read alike and stay alike, and what a word in them may be.</summary>
internal sealed record LinkedEditingRanges(ImmutableArray<Range> Ranges, string WordPattern);
