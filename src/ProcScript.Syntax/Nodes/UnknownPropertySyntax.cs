using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>mass unknown because "…"</c>: a property that nobody can give.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Because">Why it is not known.</param>
public sealed record UnknownPropertySyntax(TextSpan Span, WordSyntax Keyword, TextSyntax Because) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Because];
}
