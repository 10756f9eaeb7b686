using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>single use</c>, <c>captive</c>, <c>thread locker</c>, <c>keep in order</c>, <c>oiled</c>, <c>hoist</c>, <c>stretch</c>, <c>signed</c> or <c>temporary</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
public sealed record FlagPropertySyntax(TextSpan Span, WordSyntax Keyword) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword];
}
