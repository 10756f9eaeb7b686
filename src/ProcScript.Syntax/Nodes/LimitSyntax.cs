using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>What a reading must be: <c>&lt;= 5 V</c>, <c>0.5 .. 2.0 L/min</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Relation">How the reading compares.</param>
/// <param name="Quantity">With what.</param>
public sealed record LimitSyntax(TextSpan Span, LimitRelation Relation, QuantitySyntax Quantity) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Quantity];
}
