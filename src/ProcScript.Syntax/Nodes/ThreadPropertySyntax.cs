using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>thread M8x1.25</c>, <c>thread 1/4-20 UNC</c>, <c>thread #10-24</c>, <c>thread M8x1.25-LH</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Designation">The thread as written.</param>
/// <param name="DesignationSpan">Where it is written.</param>
public sealed record ThreadPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    string Designation,
    TextSpan DesignationSpan) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword];
}
