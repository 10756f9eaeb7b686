using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary><c>aside "Tilt it." needs seat_bolts</c>: the part can go out of the way without coming off.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="How">How it goes.</param>
/// <param name="Needs">The joints that must be off or slack, and further needs.</param>
public sealed record AsideSyntax(TextSpan Span, TextSyntax? How, ImmutableArray<NeedSyntax> Needs) : MemberSyntax(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [.. Present(How), .. Needs];
}
