using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A control with positions; the first is home.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Positions">The positions, home first.</param>
/// <param name="Properties">The conditions for moving it.</param>
public sealed record ControlSyntax(
    TextSpan Span,
    ReferenceSyntax Name,
    TextSyntax? Title,
    ImmutableArray<WordSyntax> Positions,
    ImmutableArray<MemberSyntax> Properties) : MemberSyntax(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Present(Name, Title), .. Positions, .. Properties];
}
