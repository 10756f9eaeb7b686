using ProcScript.Syntax.Text;

namespace ProcScript.Model.Texts;

/// <summary>A text that an author wrote and that cards print, where it stands.</summary>
/// <param name="Key">What it is known by within its file: where it stands, in words that a comment or a moved line leaves as they are.</param>
/// <param name="Span">The text with its quotes; of what is called by its name alone, the name.</param>
/// <param name="Source">The text.</param>
public sealed record AuthorTextUnit(string Key, TextSpan Span, string Source);
