using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>stage "Roof" { … }</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Title">The title.</param>
/// <param name="Steps">Alerts, actions, <c>discard</c>, calls, <c>each</c>, <c>when</c>.</param>
public sealed record StageSyntax(TextSpan Span, TextSyntax Title, ImmutableArray<SyntaxNode> Steps) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Title, .. Steps];
}
