using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A part. A part inside another travels with it.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Members">What stands between its braces.</param>
public sealed record PartSyntax(
    TextSpan Span,
    ReferenceSyntax Name,
    TextSyntax? Title,
    ImmutableArray<MemberSyntax> Members) : MemberSyntax(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Present(Name, Title), .. Members];
}
