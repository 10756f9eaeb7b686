using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>while plug, lid open because "…"</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Open">What may be open.</param>
/// <param name="Because">Why.</param>
public sealed record WhileSyntax(
    TextSpan Span,
    ImmutableArray<ReferenceSyntax> Open,
    TextSyntax Because) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Open, Because];
}
