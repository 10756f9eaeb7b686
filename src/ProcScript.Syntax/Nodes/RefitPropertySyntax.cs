using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>refit { … }</c> in the block of an action: how its inverse is done.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Properties">What stands between the braces.</param>
public sealed record RefitPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    ImmutableArray<MemberSyntax> Properties) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, .. Properties];
}
