using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>prevailing &gt;= 1.5 N.m</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Limit">What it must be.</param>
public sealed record LimitPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    LimitSyntax Limit) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Limit];
}
