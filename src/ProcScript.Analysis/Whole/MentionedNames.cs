using System.Collections.Frozen;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Analysis.Whole;

/// <summary>
/// The names that a file mentions, but for the name of a catalog entry where it is declared. They are its words and not its references,
/// which is enough to tell that a name stands nowhere.
/// </summary>
/// <param name="Names">The names, with other words of the language among them.</param>
internal sealed record MentionedNames(FrozenSet<string> Names)
{
    /// <summary>The names in a file.</summary>
    public static MentionedNames Of(SyntaxTree tree)
    {
        var declared = tree.Root.Declarations.OfType<CatalogSyntax>().Select(entry => entry.Name.Span.Start).ToHashSet();
        var names = new HashSet<string>(StringComparer.Ordinal);
        var known = names.GetAlternateLookup<ReadOnlySpan<char>>();
        // Its own pass, so that the tokens are not kept for as long as the tree.
        foreach (var token in tree.TokensFrom(0))
        {
            if (token.Category is TokenCategory.Name or TokenCategory.Keyword && !declared.Contains(token.Span.Start))
            {
                known.Add(tree.Text.Content.AsSpan(token.Span.Start, token.Span.Length));
            }
        }

        return new MentionedNames(names.ToFrozenSet(StringComparer.Ordinal));
    }
}
