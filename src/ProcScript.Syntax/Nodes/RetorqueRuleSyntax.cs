using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>retorque wheel_nuts needs mains live</c>, <c>retorque wheel_nuts after "50 km"</c>: the torque once more.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Targets">The joints.</param>
/// <param name="Needs">What must be true; null where nothing is said.</param>
/// <param name="Order">Where it stands in the refit; null where nothing is said.</param>
/// <param name="Later">When it is due after the job; null where it is a step of the refit.</param>
public sealed record RetorqueRuleSyntax(
    TextSpan Span,
    ImmutableArray<ReferenceSyntax> Targets,
    NeedsPropertySyntax? Needs,
    OrderSyntax? Order,
    TextSyntax? Later) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Targets, .. Present(Needs, Order, Later)];
}
