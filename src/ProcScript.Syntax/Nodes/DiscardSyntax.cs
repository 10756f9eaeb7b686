using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>discard x because "…"</c>: x does not go back.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Amount">How many of it; that is a finding.</param>
/// <param name="Target">What does not go back.</param>
/// <param name="Because">Why.</param>
public sealed record DiscardSyntax(TextSpan Span, AmountSyntax? Amount, ReferenceSyntax Target, TextSyntax Because) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        Present(Amount, Target, Because);
}
