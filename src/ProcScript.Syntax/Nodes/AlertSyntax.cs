using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>
/// <c>danger</c>, <c>warning</c>, <c>caution</c> or <c>notice</c>; the keyword says which. It binds to the action after it and to what undoes
/// that; with <c>strip</c> or <c>refit</c> before it, to one of them only.
/// </summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The signal word.</param>
/// <param name="Phase">Which way it stands.</param>
/// <param name="Text">What it says.</param>
public sealed record AlertSyntax(TextSpan Span, WordSyntax Keyword, NeedsPhase Phase, TextSyntax Text) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Text];
}
