using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>The <c>4 m10x30</c> of <c>undo 4 m10x30 seat_bolts</c>: what a draft declares the joint from.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Count">How many.</param>
/// <param name="Kind">The catalog kind.</param>
public sealed record PiecesSyntax(TextSpan Span, CountSyntax Count, WordSyntax Kind) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Count, Kind];
}
