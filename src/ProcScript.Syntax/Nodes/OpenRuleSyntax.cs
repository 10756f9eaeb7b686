using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>restore battery while front_bolts open because "…"</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Verb">The refit verb.</param>
/// <param name="Target">Its target.</param>
/// <param name="While">What may still be open then.</param>
public sealed record OpenRuleSyntax(
    TextSpan Span,
    WordSyntax Verb,
    ReferenceSyntax Target,
    WhileSyntax While) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Verb, Target, While];
}
