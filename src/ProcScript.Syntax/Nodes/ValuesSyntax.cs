using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>The values of an <c>each</c> or a parameter: a list, or a range of whole numbers already counted out.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Values">The values, in order.</param>
public sealed record ValuesSyntax(TextSpan Span, ImmutableArray<WordSyntax> Values) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Values];
}
