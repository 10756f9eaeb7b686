using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.LanguageServer.Features;

/// <summary>What concerns the shape of a document: its layout, what can be folded, what lies around a position.</summary>
internal static class LayoutMethods
{
    /// <summary>Adds the methods.</summary>
    public static void Add(MethodTable methods, Workspace workspace)
    {
        methods.Request<DocumentFormattingParams, ImmutableArray<TextEdit>>("textDocument/formatting", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked ? Format(asked, null) : []);
        methods.Request<DocumentRangeFormattingParams, ImmutableArray<TextEdit>>("textDocument/rangeFormatting", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked
                ? Format(asked, parameters.Range)
                : []);
        methods.Request<DocumentParams, ImmutableArray<FoldingRange>>("textDocument/foldingRange", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked ? [.. Folds(asked)] : []);
        methods.Request<SelectionRangeParams, ImmutableArray<SelectionRange>>("textDocument/selectionRange", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked
                ? [.. parameters.Positions.Select(position => Around(asked, asked.OffsetOf(position)))]
                : []);
    }

    /// <summary>The layout is that of the text as it is written, without the room that the analysis leaves in it.</summary>
    private static ImmutableArray<TextEdit> Format(Asked asked, Protocol.Range? range)
    {
        var tree = SyntaxTree.Parse(new SourceText(asked.Path, asked.Tree.Text.Written));
        var places = new TextPlaces(tree.Text, asked.Analysis.Encoding);
        return Formatter.Edits(tree, range is { } wanted ? places.SpanOf(wanted) : null) is { } edits
            ? [.. edits.Select(edit => new TextEdit(places.RangeOf(edit.Place.Span), edit.NewText))]
            : throw new RequestRefusedException("The document has an error in its text, which leaves open what belongs together: fix it first.");
    }

    private static IEnumerable<FoldingRange> Folds(Asked asked)
    {
        var text = asked.Tree.Text;
        if (asked.Tree.Root.Uses is [var first, .., var last])
        {
            yield return new FoldingRange(text.LineAt(first.Span.Start), text.LineAt(last.Span.End), "imports");
        }

        foreach (var node in asked.Tree.Root.Declarations.SelectMany(declaration => declaration.DescendantsAndSelf()))
        {
            var (from, to) = (text.LineAt(node.Span.Start), text.LineAt(node.Span.End));
            if (to > from + 1 && node.Span.End > 0 && text.Content[node.Span.End - 1] == '}')
            {
                yield return new FoldingRange(from, to - 1, null);
            }
        }

        foreach (var (from, to) in CommentBlocks(asked))
        {
            yield return new FoldingRange(from, to, "comment");
        }
    }

    /// <summary>Comments on lines of their own, right below each other.</summary>
    private static IEnumerable<(int From, int To)> CommentBlocks(Asked asked)
    {
        var text = asked.Tree.Text;
        (int From, int To)? block = null;
        foreach (var comment in asked.Tree.Tokens.Where(token => token.Category == TokenCategory.Comment))
        {
            var line = text.LineAt(comment.Span.Start);
            if (!string.IsNullOrWhiteSpace(text.Content[text.LineSpan(line).Start..comment.Span.Start]))
            {
                continue;
            }

            if (block is { } open && open.To == line - 1)
            {
                block = (open.From, line);
                continue;
            }

            if (block is { } done && done.To > done.From)
            {
                yield return done;
            }

            block = (line, line);
        }

        if (block is { } final && final.To > final.From)
        {
            yield return final;
        }
    }

    private static SelectionRange Around(Asked asked, int offset)
    {
        var range = new SelectionRange(asked.Places.RangeOf(new TextSpan(0, asked.Tree.Text.Content.Length)), null);
        SyntaxNode node = asked.Tree.Root;
        while (node.Children.FirstOrDefault(child => child.Span.Touches(offset) && child.Span.Length > 0) is { } child)
        {
            node = child;
            var inner = asked.Places.RangeOf(node.Span);
            range = inner == range.Range ? range : new SelectionRange(inner, range);
        }

        return range;
    }
}
