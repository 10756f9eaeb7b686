using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>torque 20, 40 ± 3 N.m + 90°</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Stages">The torques, one after the other.</param>
/// <param name="Angles">How far it is turned on after that, each behind a plus.</param>
public sealed record TorquePropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    ImmutableArray<QuantitySyntax> Stages,
    ImmutableArray<QuantitySyntax> Angles) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, .. Stages, .. Angles];
}
