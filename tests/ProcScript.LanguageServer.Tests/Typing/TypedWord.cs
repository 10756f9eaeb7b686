using ProcScript.Model.Names;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.LanguageServer.Tests.Typing;

/// <summary>
/// A word of a file that somebody who types it could be offered: not one that the writer makes up, which are new names, texts and figures;
/// and not a name that the text has not come to yet.
/// </summary>
internal sealed record TypedWord(int Start, string Word)
{
    /// <summary>The words of a file, in order.</summary>
    public static IEnumerable<TypedWord> In(SyntaxTree tree, string path, LibraryNames names)
    {
        var nodes = tree.Root.DescendantsAndSelf().ToList();
        var units = nodes.OfType<UnitSyntax>().Where(unit => unit.Span.Length > 0).ToDictionary(unit => unit.Span.Start);
        var own = nodes.Select(node => node is ReferenceSyntax reference && IsNew(reference.Name.Span.Start, path, names) ? reference.Span : Own(node)).OfType<TextSpan>().Where(span => span.Length > 0).ToList();
        var content = tree.Text.Content;
        var end = 0;
        foreach (var token in tree.Tokens)
        {
            if (token.Span.Start < end)
            {
                continue;
            }

            if (units.TryGetValue(token.Span.Start, out var unit))
            {
                end = unit.Span.End;
                yield return new TypedWord(token.Span.Start, tree.Text.Slice(unit.Span));
            }
            else if (token.Category is TokenCategory.Keyword or TokenCategory.Name
                && !own.Exists(span => span.Start <= token.Span.Start && token.Span.End <= span.End)
                && !IsNew(token.Span.Start, path, names))
            {
                yield return new TypedWord(token.Span.Start, tree.Text.Slice(token.Span));
            }
            else if (token.Category == TokenCategory.Text && tree.Root.Uses.Any(one => one.Path.Span == token.Span))
            {
                yield return new TypedWord(token.Span.Start, tree.Text.Slice(token.Span));
            }
        }
    }

    private static bool IsNew(int start, string path, LibraryNames names) =>
        names.In(path)!.At(start) is { } use && use.Span.Start == start
        && (use.IsDeclaration
            || (names.Meaning(use, path) is { } thing && thing.Path == path && names.Declarations(thing).All(place => place.Span.Start > start)));

    /// <summary>What the writer makes up, or copies from the part in his hand.</summary>
    private static TextSpan? Own(SyntaxNode node) => node switch
    {
        ValuesSyntax => node.Span,
        ThreadPropertySyntax { Keyword: var keyword } => TextSpan.FromBounds(keyword.Span.End, node.Span.End),
        GradePropertySyntax { Keyword: var keyword } => TextSpan.FromBounds(keyword.Span.End, node.Span.End),
        ControlSyntax { Positions: [var first, .., var last] } => first.Span.Cover(last.Span),
        _ => null,
    };
}
