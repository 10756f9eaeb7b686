namespace ProcScript.LanguageServer.Protocol;

/// <summary>A place in a document; lines and characters count from 0, characters in the encoding that was agreed on.</summary>
internal readonly record struct Position(int Line, int Character);

/// <summary>A stretch of a document; its end is not part of it.</summary>
internal readonly record struct Range(Position Start, Position End);

/// <summary>A stretch of some document.</summary>
internal sealed record Location(string Uri, Range Range);

/// <summary>Names a document.</summary>
internal sealed record TextDocumentIdentifier(string Uri);

/// <summary>Names a document in one of its versions.</summary>
internal sealed record VersionedTextDocumentIdentifier(string Uri, int Version);

/// <summary>A place in a document, as most requests give it.</summary>
internal sealed record TextDocumentPositionParams(TextDocumentIdentifier TextDocument, Position Position);

/// <summary>Text for a person.</summary>
internal sealed record MarkupContent(string Kind, string Value)
{
    /// <summary>Markdown.</summary>
    public static MarkupContent Markdown(string value) => new("markdown", value);
}
