using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>verify "…" expect &lt;= 5 V</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Text">What is looked at.</param>
/// <param name="Expect">What the reading must be.</param>
public sealed record VerifyPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    TextSyntax Text,
    LimitSyntax? Expect) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    public override IEnumerable<SyntaxNode> Children =>
        Present(Keyword, Text, Expect);
}
