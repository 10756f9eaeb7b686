using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Formatting;

/// <summary>
/// Lays a file out. Only blanks and line breaks change: every word and every comment stays, in its order. What the author put on one
/// line stays on one while it fits, what stands in lines of its own stays so, and one blank line stays where there were any.
/// </summary>
public static class Formatter
{
    /// <summary>The columns of a line, as far as texts let it.</summary>
    public const int LineWidth = 120;

    /// <summary>The file as it should be laid out; null where it has an error in its text, which leaves open what belongs together.</summary>
    public static string? Format(SyntaxTree tree) => Edits(tree) is { } edits ? TextEdits.Apply(tree.Text.Content, edits) : null;

    /// <summary>
    /// The edits that lay a file out, in the order of the text, each of blanks between two words; null where the file has an error in its
    /// text.
    /// </summary>
    /// <param name="tree">The file.</param>
    /// <param name="range">Only what touches this stretch is laid out; null for all.</param>
    public static ImmutableArray<TextEdit>? Edits(SyntaxTree tree, TextSpan? range = null)
    {
        ArgumentNullException.ThrowIfNull(tree);
        if (!tree.Findings.IsEmpty)
        {
            return null;
        }

        var words = LayoutWords.Of(tree);
        var gaps = LayoutPrinter.Print(words, LayoutBlock.File(words));
        var edits = ImmutableArray.CreateBuilder<TextEdit>();
        for (var gap = 0; gap < gaps.Length; gap++)
        {
            var place = words.Gap(gap);
            var isAskedFor = range is not { } asked || (place.Start <= asked.End && place.End >= asked.Start);
            if (isAskedFor && !tree.Text.Content.AsSpan(place.Start, place.Length).SequenceEqual(gaps[gap]))
            {
                edits.Add(new TextEdit(new SourceSpan(tree.Text.Path, place), gaps[gap]));
            }
        }

        return edits.ToImmutable();
    }
}
