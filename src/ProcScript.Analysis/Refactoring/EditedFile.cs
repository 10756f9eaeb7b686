using System.Collections.Immutable;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Refactoring;

/// <summary>A file as it is after some edits: laid out, where it was laid out before.</summary>
internal static class EditedFile
{
    /// <summary>The edit of a file that is laid out and puts a text in the place of a stretch; null where the result has an error in its text.</summary>
    public static ImmutableArray<TextEdit>? Replace(SyntaxTree tree, TextSpan stretch, string by) =>
        Edits(tree, tree.Text.Content[..stretch.Start] + by + tree.Text.Content[stretch.End..]);

    /// <summary>The edits that make a text of a file, laid out as it was; null where the result has an error in its text.</summary>
    public static ImmutableArray<TextEdit>? Edits(SyntaxTree tree, string edited) =>
        LaidOut(tree, edited) is { } text && text != tree.Text.Content ? [Difference(tree.Text, text)] : null;

    /// <summary>
    /// A text of a file, laid out where the file is; of another, what has changed is laid out, and the rest is its author's. Null where it has
    /// an error in its text.
    /// </summary>
    public static string? LaidOut(SyntaxTree tree, string edited)
    {
        var after = SyntaxTree.Parse(new SourceText(tree.Text.Path, edited));
        TextSpan? changed = Formatter.Edits(tree) is { IsEmpty: true } ? null : Changed(tree.Text.Content, edited);
        return Formatter.Edits(after, changed) is { } layout ? TextEdits.Apply(edited, layout) : null;
    }

    /// <summary>One edit of the lines in which a text differs from another.</summary>
    public static TextEdit Difference(SourceText text, string other)
    {
        var content = text.Content;
        var changed = Changed(content, other);
        var tail = other.Length - changed.End;
        var start = text.LineSpan(text.LineAt(changed.Start)).Start;
        return new TextEdit(new SourceSpan(text.Path, TextSpan.FromBounds(start, content.Length - tail)), other[start..^tail]);
    }

    /// <summary>The stretch of a text in which it differs from another.</summary>
    private static TextSpan Changed(string before, string after)
    {
        var start = before.AsSpan().CommonPrefixLength(after);
        var most = Math.Min(before.Length, after.Length) - start;
        var tail = 0;
        while (tail < most && before[^(tail + 1)] == after[^(tail + 1)])
        {
            tail++;
        }

        // Nothing is cut between the two halves of a letter or of a line break.
        start -= start > 0 && (char.IsHighSurrogate(before[start - 1]) || before[start - 1] == '\r') ? 1 : 0;
        tail -= tail > 0 && (char.IsLowSurrogate(before[^tail]) || (before[^tail] == '\n' && (Ends(before, tail) == '\r' || Ends(after, tail) == '\r'))) ? 1 : 0;
        return TextSpan.FromBounds(start, after.Length - tail);
    }

    /// <summary>The character before the last ones.</summary>
    private static char Ends(string text, int last) => last < text.Length ? text[^(last + 1)] : '\0';

    /// <summary>The line break that a file has.</summary>
    public static string NewLine(SourceText text) => text.Content.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
}
