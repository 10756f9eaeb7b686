using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Parsing;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Syntax;

/// <summary>One parsed file: its text, its tree, its suppressions and what the parser had to say. Any text gives one.</summary>
public sealed class SyntaxTree
{
    private ImmutableArray<SyntaxToken> _tokens;

    internal SyntaxTree(
        SourceText text,
        FileSyntax root,
        ImmutableArray<SuppressionComment> suppressions,
        ImmutableArray<Finding> findings)
    {
        Text = text;
        Root = root;
        Suppressions = suppressions;
        Findings = findings;
    }

    /// <summary>The text.</summary>
    public SourceText Text { get; }

    /// <summary>The tree.</summary>
    public FileSyntax Root { get; }

    /// <summary>The <c>// proc: allow …</c> comments, in order.</summary>
    public ImmutableArray<SuppressionComment> Suppressions { get; }

    /// <summary>What is wrong with the text as text (1xxx).</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>
    /// Every token of the text, blanks and comments among them; end to end they are the text. A formatter and an editor ask for
    /// them, a check does not, so they are read when asked for.
    /// </summary>
    public ImmutableArray<SyntaxToken> Tokens
    {
        get
        {
            if (_tokens.IsDefault)
            {
                ImmutableInterlocked.InterlockedInitialize(ref _tokens, TokenList.Read(Text.Content));
            }

            return _tokens;
        }
    }

    /// <summary>Parses a text. Any text gives a tree; what is wrong with it is among the findings.</summary>
    /// <param name="text">The text.</param>
    /// <param name="cancellation">Gives up the parse.</param>
    public static SyntaxTree Parse(SourceText text, CancellationToken cancellation = default) =>
        FileParser.Parse(text, cancellation);

    /// <summary>
    /// Parses a text that came of this tree's by a change; what comes out is what a parse of it would give. Where both are laid out by one
    /// <see cref="SlackLayout"/>, the declarations that the change does not touch are the same nodes.
    /// </summary>
    /// <param name="text">The text after the change.</param>
    /// <param name="cancellation">Gives up the parse.</param>
    public SyntaxTree With(SourceText text, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(text);
        return ChangedFile.Parse(this, text, cancellation);
    }

    /// <summary>The tokens of the text from a place between two of them on.</summary>
    /// <param name="start">Where the first begins.</param>
    public IEnumerable<SyntaxToken> TokensFrom(int start) => TokenList.ReadFrom(Text.Content, start);
}
