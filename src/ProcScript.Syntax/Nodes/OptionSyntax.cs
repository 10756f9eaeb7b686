using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>option air_seat "air-suspended seat"</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
public sealed record OptionSyntax(TextSpan Span, WordSyntax Name, TextSyntax? Title) : MemberSyntax(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        Present(Name, Title);
}
