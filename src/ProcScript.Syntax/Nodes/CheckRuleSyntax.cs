using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>check "…" before fit headliner</c>: a check within the refit.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Text">What is checked.</param>
/// <param name="Expect">What the reading must be.</param>
/// <param name="Needs">What the machine must be like.</param>
/// <param name="Order">Where it stands; null for the end.</param>
public sealed record CheckRuleSyntax(
    TextSpan Span,
    TextSyntax Text,
    LimitSyntax? Expect,
    NeedsPropertySyntax? Needs,
    OrderSyntax? Order) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    public override IEnumerable<SyntaxNode> Children =>
        Present(Text, Expect, Needs, Order);
}
