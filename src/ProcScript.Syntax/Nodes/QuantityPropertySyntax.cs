using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>length</c>, <c>torque</c>, <c>size</c>, <c>mass</c>, <c>spare</c>, <c>wait</c>, <c>charge</c>, <c>takes</c>, <c>attended</c> or <c>time</c> with a quantity.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Quantity">The quantity.</param>
public sealed record QuantityPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    QuantitySyntax Quantity) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    public override IEnumerable<SyntaxNode> Children =>
        [Keyword, Quantity];
}
