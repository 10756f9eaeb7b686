using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>covered by 4 snap_cap as seat_caps</c>, <c>locked by 2 split_pin as pins</c>; its keyword is <c>covered</c> or <c>locked</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Count">How many.</param>
/// <param name="Kind">The catalog kind.</param>
/// <param name="Name">The name.</param>
/// <param name="Clauses">The clauses, inline ones first.</param>
public sealed record CoverSyntax(
    TextSpan Span,
    WordSyntax Keyword,
    CountSyntax Count,
    WordSyntax Kind,
    ReferenceSyntax Name,
    ImmutableArray<MemberSyntax> Clauses) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Count, Kind, Name, .. Clauses];
}
