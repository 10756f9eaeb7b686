using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A procedure on a machine. Its parts stand in the order of the text: name, parameters, title, machine, variants, items.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it, where written.</param>
/// <param name="Parameters">What a caller chooses.</param>
/// <param name="Machine">The machine it works on.</param>
/// <param name="Variants">The variants of it that have the job; empty where all have.</param>
/// <param name="Items">Goals, stages, calls, the work, the refit rules, <c>each</c>, <c>when</c>, alerts and properties.</param>
public sealed record ProcedureSyntax(
    TextSpan Span,
    WordSyntax Name,
    TextSyntax? Title,
    ImmutableArray<ParameterSyntax> Parameters,
    WordSyntax Machine,
    ImmutableArray<ForVariantsSyntax> Variants,
    ImmutableArray<SyntaxNode> Items) : DeclarationSyntax(Span, Name, Title)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Name, .. Parameters, .. Present(Title, Machine), .. Variants, .. Items];
}
