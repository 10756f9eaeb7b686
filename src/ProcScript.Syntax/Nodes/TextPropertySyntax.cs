using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>how</c>, <c>photo</c>, <c>check</c>, <c>store</c>, <c>ppe</c>, <c>at</c>, <c>release</c>, <c>engage</c>, <c>isolate</c>, <c>restore</c>, <c>empty</c> or <c>fill</c> with a text.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Text">The text.</param>
public sealed record TextPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    TextSyntax Text) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    public override IEnumerable<SyntaxNode> Children =>
        [Keyword, Text];
}
