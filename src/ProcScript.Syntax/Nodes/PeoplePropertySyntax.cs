using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>people 2</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Count">How many.</param>
public sealed record PeoplePropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    CountSyntax Count) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Count];
}
