using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>power mains, house</c>: what is live during a test.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Energies">The energies.</param>
public sealed record PowerSyntax(
    TextSpan Span,
    ImmutableArray<ReferenceSyntax> Energies) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        Energies;
}
