using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>place footwell "footwell" room for 1</c></summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Room">How many people work in it at once.</param>
public sealed record PlaceSyntax(TextSpan Span, ReferenceSyntax Name, TextSyntax? Title, CountSyntax Room) : MemberSyntax(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Present(Name, Title), Room];
}
