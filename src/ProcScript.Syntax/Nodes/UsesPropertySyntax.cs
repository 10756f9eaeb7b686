using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>uses 5 mL of pag_oil</c>: what is consumed.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Amount">How much.</param>
/// <param name="Supply">The supply.</param>
public sealed record UsesPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    QuantitySyntax Amount,
    ReferenceSyntax Supply) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Amount, Supply];
}
