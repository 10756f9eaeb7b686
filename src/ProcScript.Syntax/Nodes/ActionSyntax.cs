using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A verb with its target: <c>undo 4 of roof_bolts</c>, <c>set column to down</c>, <c>replace evaporator</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Verb">The verb.</param>
/// <param name="Amount">How many of them; null for all.</param>
/// <param name="Pieces">How many of which kind they are, where the step says what the machine does not have yet.</param>
/// <param name="Target">What it is done to.</param>
/// <param name="Position">The position after <c>to</c>.</param>
/// <param name="WhereNeeded">Whether it is left out where it is done already.</param>
/// <param name="InBackground">Whether other work goes on meanwhile.</param>
/// <param name="Properties">What stands between its braces.</param>
public sealed record ActionSyntax(
    TextSpan Span,
    WordSyntax Verb,
    AmountSyntax? Amount,
    PiecesSyntax? Pieces,
    ReferenceSyntax Target,
    WordSyntax? Position,
    bool WhereNeeded,
    bool InBackground,
    ImmutableArray<MemberSyntax> Properties) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Present(Verb, Amount, Pieces, Target, Position), .. Properties];
}
