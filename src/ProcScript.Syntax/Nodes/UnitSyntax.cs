using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A unit as written, such as <c>N.m</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Text">The unit with every middle dot written as a point.</param>
public sealed record UnitSyntax(TextSpan Span, string Text) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [];
}
