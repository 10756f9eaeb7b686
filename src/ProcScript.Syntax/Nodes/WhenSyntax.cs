using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>when v is a { … }</c> or <c>when option { … }</c>, in a machine, a procedure, a stage, a refit block, or the block of an item or an action.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Test">The condition.</param>
/// <param name="Body">What stands only then.</param>
public sealed record WhenSyntax(TextSpan Span, TestSyntax Test, ImmutableArray<SyntaxNode> Body) : MemberSyntax(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Test, .. Body];
}
