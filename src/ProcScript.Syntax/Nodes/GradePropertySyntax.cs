using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>grade 8.8</c>, <c>grade 5</c>, <c>grade "A2-70"</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Grade">The grade as written, without quotes.</param>
/// <param name="GradeSpan">Where it is written.</param>
public sealed record GradePropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    string Grade,
    TextSpan GradeSpan) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword];
}
