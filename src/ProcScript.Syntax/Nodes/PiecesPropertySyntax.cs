using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>seals 2 oring_10</c>, <c>cap 2 closing_cap</c>: how many of what one joint takes anew, or is capped with.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Count">How many a joint.</param>
/// <param name="Item">The supply or the tool.</param>
public sealed record PiecesPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    CountSyntax Count,
    ReferenceSyntax Item) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Count, Item];
}
