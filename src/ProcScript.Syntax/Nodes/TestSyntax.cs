using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>The condition of a <c>when</c>: a variable's value, or an option.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The variable or the option.</param>
/// <param name="Negated">Whether a <c>not</c> stands in it.</param>
/// <param name="Value">The value compared with; null for an option.</param>
public sealed record TestSyntax(TextSpan Span, WordSyntax Name, bool Negated, WordSyntax? Value) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        Present(Name, Value);
}
