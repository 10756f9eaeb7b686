using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A word such as <c>tool</c>, <c>behind</c> or <c>renew with</c> with names.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Names">The names.</param>
public sealed record NamesPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    ImmutableArray<ReferenceSyntax> Names) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, .. Names];
}
