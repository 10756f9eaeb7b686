using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A name with its index: <c>pillar_trim[left]</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The name.</param>
/// <param name="Indices">The values or variables in brackets.</param>
public sealed record ReferenceSyntax(
    TextSpan Span,
    WordSyntax Name,
    ImmutableArray<WordSyntax> Indices) : SyntaxNode(Span)
{
    /// <summary>The name as it is laid out, whatever blanks and line ends stand within it.</summary>
    public string Written => Indices.IsEmpty ? Name.Text : $"{Name.Text}[{string.Join(", ", Indices.Select(index => index.Text))}]";

    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Name, .. Indices];
}
