using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>One need: <c>column at down</c>, <c>battery live</c>, <c>seat_bolts</c>, or behind <c>behind</c> a part.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Item">What it is about.</param>
/// <param name="State">The state word, such as <c>live</c>; null where none is written or a position is.</param>
/// <param name="Position">The position after <c>at</c>.</param>
/// <param name="IsAlternative">Whether an <c>or</c> stands before it: it will do instead of the one before.</param>
public sealed record NeedSyntax(
    TextSpan Span,
    ReferenceSyntax Item,
    WordSyntax? State,
    WordSyntax? Position,
    bool IsAlternative) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        Present(Item, State, Position);
}
