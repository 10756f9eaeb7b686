using ProcScript.Syntax;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Analysis.Drafting;

/// <summary>Reads the questions that a draft leaves in a text: comments that begin with <c>draft:</c>.</summary>
internal static class DraftQuestions
{
    /// <summary>What such a comment begins with, behind its slashes.</summary>
    public const string Mark = "draft:";

    /// <summary>The open questions of a file, in order.</summary>
    public static IEnumerable<DraftQuestion> In(SyntaxTree tree)
    {
        // Most files have none, and their tokens need not be read for it.
        if (!tree.Text.Content.Contains(Mark, StringComparison.OrdinalIgnoreCase))
        {
            return [];
        }

        return tree.Tokens.Where(token => token.Category == TokenCategory.Comment)
            .Select(token => Read(tree.Text.Content, token.Span))
            .OfType<DraftQuestion>();
    }

    private static DraftQuestion? Read(string content, TextSpan comment)
    {
        var text = content.AsSpan(comment.Start, comment.Length).TrimStart('/').TrimStart();
        return text.StartsWith(Mark, StringComparison.OrdinalIgnoreCase)
            ? new DraftQuestion(new TextSpan(comment.Start, content.AsSpan(comment.Start, comment.Length).TrimEnd().Length), text[Mark.Length..].Trim().ToString())
            : null;
    }
}

/// <summary>A question that is still open.</summary>
/// <param name="Span">The comment.</param>
/// <param name="Text">What it asks.</param>
internal sealed record DraftQuestion(TextSpan Span, string Text);
