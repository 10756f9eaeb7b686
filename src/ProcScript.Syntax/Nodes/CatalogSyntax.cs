using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A catalog entry: <c>tool</c>, <c>supply</c>, <c>fastener</c>, <c>clip</c>, <c>connector</c>, <c>line</c> or <c>bond</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">Which of them.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it, where written.</param>
/// <param name="Properties">What stands between its braces.</param>
public sealed record CatalogSyntax(
    TextSpan Span,
    WordSyntax Keyword,
    WordSyntax Name,
    TextSyntax? Title,
    ImmutableArray<MemberSyntax> Properties) : DeclarationSyntax(Span, Name, Title)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Present(Keyword, Name, Title), .. Properties];
}
