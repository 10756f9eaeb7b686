using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>The <c>refit</c> block of a procedure: where the refit is not the plain reverse.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Rules">Order rules, checks, alerts, <c>discard</c>, <c>each</c>, <c>when</c>.</param>
public sealed record RefitSyntax(TextSpan Span, ImmutableArray<SyntaxNode> Rules) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Rules];
}
