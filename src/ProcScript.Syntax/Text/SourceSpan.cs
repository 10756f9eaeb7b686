namespace ProcScript.Syntax.Text;

/// <summary>A stretch of one file of the library.</summary>
/// <param name="Path">The file, relative to the library root, with forward slashes.</param>
/// <param name="Span">The stretch.</param>
public readonly record struct SourceSpan(string Path, TextSpan Span);
