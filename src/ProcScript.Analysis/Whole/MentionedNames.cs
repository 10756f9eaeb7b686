using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Analysis.Whole;

/// <summary>
/// The names that a stretch of text mentions, but for the name of a catalog entry where it is declared. They are its words and not its
/// references, which is enough to tell that a name stands nowhere.
/// </summary>
/// <param name="Names">The names, with other words of the language among them.</param>
internal sealed record MentionedNames(FrozenSet<string> Names)
{
    /// <summary>The names in a file: by its declarations, which outlive changes of others; where its text has errors, in one.</summary>
    /// <param name="tree">The file.</param>
    /// <param name="known">What is known of trees and declarations.</param>
    public static ImmutableArray<MentionedNames> Of(SyntaxTree tree, ConditionalWeakTable<object, MentionedNames> known) => tree.Findings.IsEmpty
        ? [.. tree.Root.Declarations.Select(one => known.GetValue(one, _ => In(tree, [one], tree.TokensFrom(one.Span.Start).TakeWhile(token => token.Span.Start < one.Span.End))))]
        : [known.GetValue(tree, _ => In(tree, tree.Root.Declarations, tree.TokensFrom(0)))];

    /// <summary>The names among tokens; a pass of its own, so that these are not kept for as long as the tree.</summary>
    private static MentionedNames In(SyntaxTree tree, IEnumerable<DeclarationSyntax> declarations, IEnumerable<SyntaxToken> tokens)
    {
        var declared = declarations.OfType<CatalogSyntax>().Select(entry => entry.Name.Span.Start).ToHashSet();
        var names = new HashSet<string>(StringComparer.Ordinal);
        var found = names.GetAlternateLookup<ReadOnlySpan<char>>();
        foreach (var token in tokens)
        {
            if (token.Category is TokenCategory.Name or TokenCategory.Keyword && !declared.Contains(token.Span.Start))
            {
                found.Add(tree.Text.Content.AsSpan(token.Span.Start, token.Span.Length));
            }
        }

        return new MentionedNames(names.ToFrozenSet(StringComparer.Ordinal));
    }
}
