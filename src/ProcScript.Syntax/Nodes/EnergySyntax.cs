using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>An energy that can hurt: electricity, pressure, a spring.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Properties">What stands between its braces.</param>
public sealed record EnergySyntax(
    TextSpan Span,
    ReferenceSyntax Name,
    TextSyntax? Title,
    ImmutableArray<MemberSyntax> Properties) : MemberSyntax(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Present(Name, Title), .. Properties];
}
