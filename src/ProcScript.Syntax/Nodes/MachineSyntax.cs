using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A machine.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it, where written.</param>
/// <param name="Members">What it is made of.</param>
public sealed record MachineSyntax(
    TextSpan Span,
    WordSyntax Name,
    TextSyntax? Title,
    ImmutableArray<MemberSyntax> Members) : DeclarationSyntax(Span, Name, Title)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Present(Name, Title), .. Members];
}
