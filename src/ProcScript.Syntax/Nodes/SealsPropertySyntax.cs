using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>seals 2 oring_10</c>: what one joint of the kind takes anew.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Count">How many a joint.</param>
/// <param name="Supply">The supply.</param>
public sealed record SealsPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    CountSyntax Count,
    ReferenceSyntax Supply) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    public override IEnumerable<SyntaxNode> Children =>
        [Keyword, Count, Supply];
}
