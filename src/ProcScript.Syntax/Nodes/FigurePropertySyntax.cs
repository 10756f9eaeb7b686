using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>
/// <c>figure "img/bolts.jpg" "Four bolts, two hidden"</c>: a picture. At an item it stands at the step and at what undoes it; with <c>strip</c>
/// or <c>refit</c> before it, at one of them only.
/// </summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="Keyword">The word that names the property.</param>
/// <param name="Phase">Which way it stands.</param>
/// <param name="File">The path of the file, as written.</param>
/// <param name="Caption">What it shows; null where that is not said.</param>
public sealed record FigurePropertySyntax(TextSpan Span, WordSyntax Keyword, NeedsPhase Phase, TextSyntax File, TextSyntax? Caption) : PropertySyntax(Span, Keyword)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts =>
        [Keyword, File, .. Present(Caption)];
}
