using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>snug frame_bolts, hinge_bolts before fit lid</c>: finger-tight first, the torque later.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Verb">The word <c>snug</c>.</param>
/// <param name="Targets">The joints.</param>
/// <param name="Order">Before or after what they go in; null where nothing is said.</param>
public sealed record SnugRuleSyntax(
    TextSpan Span,
    WordSyntax Verb,
    ImmutableArray<ReferenceSyntax> Targets,
    OrderSyntax? Order) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Verb, .. Targets, .. Present(Order)];
}
