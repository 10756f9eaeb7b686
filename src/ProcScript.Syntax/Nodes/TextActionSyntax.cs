using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>measure</c>, <c>task</c>, <c>check</c>, <c>record</c> or <c>pause</c> with a text.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Verb">Which.</param>
/// <param name="Text">What is done.</param>
/// <param name="Instruments">The instruments that it is done with.</param>
/// <param name="Expect">What the reading must be.</param>
/// <param name="Needs">What the machine must be like.</param>
/// <param name="InBackground">Whether other work goes on meanwhile.</param>
/// <param name="Properties">What stands between its braces.</param>
public sealed record TextActionSyntax(
    TextSpan Span,
    WordSyntax Verb,
    TextSyntax Text,
    ImmutableArray<ReferenceSyntax> Instruments,
    LimitSyntax? Expect,
    NeedsPropertySyntax? Needs,
    bool InBackground,
    ImmutableArray<MemberSyntax> Properties) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Verb, Text, .. Instruments, .. Present(Expect, Needs), .. Properties];
}
