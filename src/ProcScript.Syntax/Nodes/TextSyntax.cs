using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A quoted text.</summary>
/// <param name="Span">With its quotes.</param>
/// <param name="Value">The text meant: without quotes, with the escapes (<c>\"</c>, <c>\\</c>, <c>\n</c>) resolved.</param>
public sealed record TextSyntax(TextSpan Span, string Value) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts => [];
}
