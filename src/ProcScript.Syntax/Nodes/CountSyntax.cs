using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A whole number of things.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Value">The number; 0 where it is missing or too large, which a finding says.</param>
public sealed record CountSyntax(TextSpan Span, int Value) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [];
}
