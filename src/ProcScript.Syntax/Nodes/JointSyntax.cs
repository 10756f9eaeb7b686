using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>held by</c>, <c>wired by</c>, <c>piped by</c>: what ties the part around to another.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword"><c>held</c>, <c>wired</c> or <c>piped</c>.</param>
/// <param name="Count">How many.</param>
/// <param name="Kind">The catalog kind.</param>
/// <param name="Name">The name.</param>
/// <param name="Clauses">The clauses, inline ones first.</param>
public sealed record JointSyntax(
    TextSpan Span,
    WordSyntax Keyword,
    CountSyntax Count,
    WordSyntax Kind,
    ReferenceSyntax Name,
    ImmutableArray<MemberSyntax> Clauses) : MemberSyntax(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Count, Kind, Name, .. Clauses];
}
