using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>work { … }</c>: what is done between strip and refit.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Steps">As in a stage.</param>
public sealed record WorkSyntax(TextSpan Span, ImmutableArray<SyntaxNode> Steps) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Steps];
}
