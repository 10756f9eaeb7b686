using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>with gas, rail</c> or <c>without gas</c> behind the machine of a procedure: the machines that have the job at all.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">Which of the two.</param>
/// <param name="Options">The options.</param>
public sealed record ForVariantsSyntax(TextSpan Span, WordSyntax Keyword, ImmutableArray<WordSyntax> Options) : SyntaxNode(Span)
{
    /// <summary>Whether the options must be there, and not be missing.</summary>
    public bool IsWith => Keyword.Text == "with";

    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts => [Keyword, .. Options];
}
