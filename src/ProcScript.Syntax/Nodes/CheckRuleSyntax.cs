using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>check "…" before fit headliner</c>: a check within the refit; likewise <c>record</c> and <c>pause</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Verb">Which.</param>
/// <param name="Text">What is checked.</param>
/// <param name="Instruments">The instruments that it is done with.</param>
/// <param name="Expect">What the reading must be.</param>
/// <param name="Needs">What the machine must be like.</param>
/// <param name="Order">Where it stands; null for the end.</param>
/// <param name="Properties">What stands between its braces.</param>
public sealed record CheckRuleSyntax(
    TextSpan Span,
    WordSyntax Verb,
    TextSyntax Text,
    ImmutableArray<ReferenceSyntax> Instruments,
    LimitSyntax? Expect,
    NeedsPropertySyntax? Needs,
    OrderSyntax? Order,
    ImmutableArray<MemberSyntax> Properties) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Verb, Text, .. Instruments, .. Present(Expect, Needs, Order), .. Properties];
}
