using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>voltage 400 V ac</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Quantity">The voltage.</param>
/// <param name="Current"><c>ac</c> or <c>dc</c>; null where not said.</param>
public sealed record VoltagePropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    QuantitySyntax Quantity,
    WordSyntax? Current) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        Present(Keyword, Quantity, Current);
}
