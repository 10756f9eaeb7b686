using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>before fit headliner</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword"><c>before</c> or <c>after</c>.</param>
/// <param name="Verb">The refit verb.</param>
/// <param name="Target">Its target.</param>
/// <param name="Position">Of a control, the position; null where not said.</param>
public sealed record OrderSyntax(
    TextSpan Span,
    WordSyntax Keyword,
    WordSyntax Verb,
    ReferenceSyntax Target,
    WordSyntax? Position = null) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        Position is null ? [Keyword, Verb, Target] : [Keyword, Verb, Target, Position];
}
