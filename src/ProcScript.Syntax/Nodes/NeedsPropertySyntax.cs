using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>
/// <c>needs column at down</c>, with <c>strip</c> or <c>refit</c> before it where it binds one way only; <c>behind seat or door</c>; and either of
/// them after <c>way</c>.
/// </summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Phase">When it binds.</param>
/// <param name="Needs">The needs.</param>
public sealed record NeedsPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    NeedsPhase Phase,
    ImmutableArray<NeedSyntax> Needs) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, .. Needs];
}
