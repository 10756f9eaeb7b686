using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>verbs "press off" "press on"</c>: what the trade calls taking something off and putting it back.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword"><c>verbs</c>.</param>
/// <param name="Off">The verb on the way out.</param>
/// <param name="On">The verb on the way back.</param>
public sealed record VerbsPropertySyntax(TextSpan Span, WordSyntax Keyword, TextSyntax Off, TextSyntax On) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Off, On];
}
