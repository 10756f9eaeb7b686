using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>goal replace evaporator</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Verb">What is to be done.</param>
/// <param name="Target">With what.</param>
public sealed record GoalSyntax(TextSpan Span, WordSyntax Verb, ReferenceSyntax Target) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Verb, Target];
}
