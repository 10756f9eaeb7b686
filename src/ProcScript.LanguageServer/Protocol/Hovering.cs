namespace ProcScript.LanguageServer.Protocol;

/// <summary>What is told of the word under the pointer.</summary>
internal sealed record Hover(MarkupContent Contents, Range Range);
