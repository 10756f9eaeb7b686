using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>4 of</c> or <c>rest of</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Count">How many; null for the rest.</param>
public sealed record AmountSyntax(TextSpan Span, int? Count) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [];
}
