using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Tokens;

/// <summary>A word of the text, or what stands between the words. The tokens of a file, end to end, are its text.</summary>
/// <param name="Category">What sort of thing it is.</param>
/// <param name="Span">Where it stands.</param>
public readonly record struct SyntaxToken(TokenCategory Category, TextSpan Span);
