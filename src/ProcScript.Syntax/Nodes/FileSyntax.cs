using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A whole file.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Uses">The <c>use</c> lines.</param>
/// <param name="Declarations">The rest.</param>
public sealed record FileSyntax(
    TextSpan Span,
    ImmutableArray<UseSyntax> Uses,
    ImmutableArray<DeclarationSyntax> Declarations) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Uses.Cast<SyntaxNode>().Concat(Declarations).OrderBy(node => node.Span.Start)];
}
