using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>each v in a, b { … }</c>, in a machine, a procedure, a stage or a refit block.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Variable">The variable.</param>
/// <param name="Values">What it goes through.</param>
/// <param name="Body">What is repeated.</param>
public sealed record EachSyntax(
    TextSpan Span,
    WordSyntax Variable,
    ValuesSyntax Values,
    ImmutableArray<SyntaxNode> Body) : MemberSyntax(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Variable, Values, .. Body];
}
