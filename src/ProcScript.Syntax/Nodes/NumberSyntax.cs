using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A number as written: decimal, or a fraction as in <c>1 3/8</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Value">Its value.</param>
public sealed record NumberSyntax(TextSpan Span, double Value) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [];
}
