using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A word such as <c>length</c>, <c>mass</c> or <c>wait</c> with a quantity.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Quantity">The quantity.</param>
public sealed record QuantityPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    QuantitySyntax Quantity) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Quantity];
}
