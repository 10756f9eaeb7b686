using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>verify "…" with tester at posts expect &lt;= 5 V { behind lid }</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Text">What is looked at.</param>
/// <param name="Instruments">The instruments that it is done with.</param>
/// <param name="Place">The item at which that is done; null where none is named.</param>
/// <param name="PlaceText">Where it is done, in words; null where an item is named, or nothing.</param>
/// <param name="Expect">What the reading must be.</param>
/// <param name="Properties">What it takes to get there; empty without a block.</param>
public sealed record VerifyPropertySyntax(
    TextSpan Span,
    WordSyntax Keyword,
    TextSyntax Text,
    ImmutableArray<ReferenceSyntax> Instruments,
    ReferenceSyntax? Place,
    TextSyntax? PlaceText,
    LimitSyntax? Expect,
    ImmutableArray<MemberSyntax> Properties) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, Text, .. Instruments, .. Present(Place, PlaceText, Expect), .. Properties];
}
