using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>pattern</c> or <c>grip</c> with one of its words.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Choice">The word, <c>inside out</c> with one blank.</param>
public sealed record ChoicePropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    WordSyntax Choice) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Choice];
}
