using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>do door_out(left)</c>: the strip of another procedure, here.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Procedure">Which.</param>
/// <param name="Arguments">The values for its parameters.</param>
/// <param name="WhereNeeded">Whether what is done already is left out.</param>
public sealed record DoSyntax(
    TextSpan Span,
    WordSyntax Procedure,
    ImmutableArray<WordSyntax> Arguments,
    bool WhereNeeded) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Procedure, .. Arguments];
}
