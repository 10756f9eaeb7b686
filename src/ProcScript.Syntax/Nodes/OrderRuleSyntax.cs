using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>fit pillar_trim[left] after fit seat</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Verb">The refit verb.</param>
/// <param name="Target">Its target.</param>
/// <param name="Position">Of a control, the position; null where not said.</param>
/// <param name="Order">Before or after what.</param>
public sealed record OrderRuleSyntax(
    TextSpan Span,
    WordSyntax Verb,
    ReferenceSyntax Target,
    WordSyntax? Position,
    OrderSyntax Order) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        Position is null ? [Verb, Target, Order] : [Verb, Target, Position, Order];
}
