using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>use "path.proc"</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Path">The path as written.</param>
public sealed record UseSyntax(TextSpan Span, TextSyntax Path) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Path];
}
