using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>danger</c>, <c>warning</c>, <c>caution</c> or <c>notice</c>; the keyword says which. It binds to the action after it.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Text">What it says.</param>
public sealed record AlertSyntax(TextSpan Span, WordSyntax Keyword, TextSyntax Text) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    public override IEnumerable<SyntaxNode> Children =>
        [Keyword, Text];
}
