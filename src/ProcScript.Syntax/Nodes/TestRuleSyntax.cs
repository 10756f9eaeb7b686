using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>test "…" before fit lid { power mains  check "…" }</c>: what is done under power before the machine is whole.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Text">What it is called.</param>
/// <param name="Order">Where it stands; null for as late as the machine is not whole.</param>
/// <param name="Items">Its lines.</param>
public sealed record TestRuleSyntax(
    TextSpan Span,
    TextSyntax Text,
    OrderSyntax? Order,
    ImmutableArray<SyntaxNode> Items) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Present(Text, Order), .. Items];
}
