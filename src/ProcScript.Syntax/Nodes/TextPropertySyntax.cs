using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A word such as <c>how</c>, <c>at</c> or <c>isolate</c> with a text.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Text">The text.</param>
public sealed record TextPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    TextSyntax Text) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Text];
}
