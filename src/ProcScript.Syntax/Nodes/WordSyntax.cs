using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>One word: a name, or a word of the language whose place matters (a verb, a property's keyword).</summary>
/// <param name="Span">Where it stands; empty where it is missing.</param>
/// <param name="Text">The word; empty where it is missing.</param>
public sealed record WordSyntax(TextSpan Span, string Text) : SyntaxNode(Span)
{
    /// <summary>Whether the parser expected the word here and did not find it. A finding says so already.</summary>
    public bool IsMissing => Text.Length == 0;

    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts => [];
}
