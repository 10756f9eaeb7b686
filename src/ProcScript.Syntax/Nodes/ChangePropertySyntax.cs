using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>with evaporator add 40 mL of pag_oil</c>: what a new part adds to a fluid or takes from it.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Part">The part.</param>
/// <param name="Direction"><c>add</c> or <c>take</c>.</param>
/// <param name="Amount">How much.</param>
/// <param name="Supply">Of what; null for the fluid itself.</param>
public sealed record ChangePropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    ReferenceSyntax Part,
    WordSyntax Direction,
    QuantitySyntax Amount,
    ReferenceSyntax? Supply) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        Present(Keyword, Part, Direction, Amount, Supply);
}
