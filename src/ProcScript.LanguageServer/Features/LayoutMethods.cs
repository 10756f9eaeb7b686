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
    /// <param name="methods">The methods.</param>
    /// <param name="workspace">What is open.</param>
    /// <param name="log">Takes what the client's log is to say.</param>
    public static void Add(MethodTable methods, Workspace workspace, Action<string> log)
    {
        methods.Request<DocumentFormattingParams, ImmutableArray<TextEdit>>("textDocument/formatting", async (parameters, cancellation) =>
            await workspace.ReadAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } written ? Format(written, null, log) : []);
        methods.Request<DocumentRangeFormattingParams, ImmutableArray<TextEdit>>("textDocument/rangeFormatting", async (parameters, cancellation) =>
            await workspace.ReadAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } written
                ? Format(written, parameters.Range, log)
                : []);
        methods.Request<DocumentOnTypeFormattingParams, ImmutableArray<TextEdit>>("textDocument/onTypeFormatting", async (parameters, cancellation) =>
            await workspace.ReadAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } written
            && BlockEndingAt(written, written.Places.OffsetOf(parameters.Position)) is { } block
                ? Format(written, written.Places.RangeOf(block), static _ => { })
                : []);
        methods.Request<DocumentParams, ImmutableArray<FoldingRange>>("textDocument/foldingRange", async (parameters, cancellation) =>
            await workspace.ReadAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } written ? [.. Folds(written.Tree)] : []);
        methods.Request<SelectionRangeParams, ImmutableArray<SelectionRange>>("textDocument/selectionRange", async (parameters, cancellation) =>
            await workspace.ReadAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } written
                ? [.. parameters.Positions.Select(position => Around(written, written.Places.OffsetOf(position)))]
                : []);
    }

    /// <summary>
    /// The layout is that of the text as it is written, without the room that the analysis leaves in it. A text with an error is left as it is, and
    /// the log says so: many editors ask at every save, and the error is told in its place already.
    /// </summary>
    private static ImmutableArray<TextEdit> Format(WrittenDocument written, Protocol.Range? range, Action<string> log)
    {
        var tree = SyntaxTree.Parse(new SourceText(written.Path, written.Tree.Text.Written));
        var places = new TextPlaces(tree.Text, written.Encoding);
        if (Formatter.Edits(tree, range is { } wanted ? places.SpanOf(wanted) : null) is { } edits)
        {
            return [.. edits.Select(edit => new TextEdit(places.RangeOf(edit.Place.Span), edit.NewText))];
        }

        log($"{written.Path} is not laid out: it has an error in its text, which leaves open what belongs together.");
        return [];
    }

    /// <summary>The innermost block whose closing brace stands right before a place.</summary>
    private static TextSpan? BlockEndingAt(WrittenDocument written, int offset) =>
        offset > 0 && written.Tree.Text.Content[offset - 1] == '}'
            ? written.Tree.Root.DescendantsAndSelf().Where(node => node.Span.End == offset && node.Span.Length > 1).Select(node => (TextSpan?)node.Span).LastOrDefault()
            : null;

    private static IEnumerable<FoldingRange> Folds(SyntaxTree tree)
    {
        var text = tree.Text;
        if (tree.Root.Uses is [var first, .., var last])
        {
            yield return new FoldingRange(text.LineAt(first.Span.Start), text.LineAt(last.Span.End), "imports");
        }

        foreach (var node in tree.Root.Declarations.SelectMany(declaration => declaration.DescendantsAndSelf()))
        {
            var (from, to) = (text.LineAt(node.Span.Start), text.LineAt(node.Span.End));
            if (to > from + 1 && node.Span.End > 0 && text.Content[node.Span.End - 1] == '}')
            {
                yield return new FoldingRange(from, to - 1, null);
            }
        }

        foreach (var (from, to) in CommentBlocks(tree))
        {
            yield return new FoldingRange(from, to, "comment");
        }
    }

    /// <summary>Comments on lines of their own, right below each other.</summary>
    private static IEnumerable<(int From, int To)> CommentBlocks(SyntaxTree tree)
    {
        var text = tree.Text;
        (int From, int To)? block = null;
        foreach (var comment in tree.Tokens.Where(token => token.Category == TokenCategory.Comment))
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

    private static SelectionRange Around(WrittenDocument written, int offset)
    {
        var range = new SelectionRange(written.Places.RangeOf(new TextSpan(0, written.Tree.Text.Content.Length)), null);
        SyntaxNode node = written.Tree.Root;
        while (node.Children.FirstOrDefault(child => child.Span.Touches(offset) && child.Span.Length > 0) is { } child)
        {
            node = child;
            var inner = written.Places.RangeOf(node.Span);
            range = inner == range.Range ? range : new SelectionRange(inner, range);
        }

        return range;
    }
}
