using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>side in left, right</c>: a choice that a caller of the procedure makes.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The variable.</param>
/// <param name="Values">What it may be.</param>
public sealed record ParameterSyntax(TextSpan Span, WordSyntax Name, ValuesSyntax Values) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Name, Values];
}
