using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Parsing;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>Findings of <see cref="UnexpectedText"/> of steps that stand in no block.</summary>
internal static class StrayStep
{
    /// <param name="text">The text.</param>
    /// <param name="verb">The first word of the steps.</param>
    /// <param name="steps">All of them.</param>
    /// <param name="sort">What block they belong in.</param>
    /// <param name="title">What a stage of them may be called, with its quotes.</param>
    public static Finding At(SourceText text, TextSpan verb, TextSpan steps, StraySort sort, string title)
    {
        var (block, head) = sort switch
        {
            StraySort.Work => ("`work`", "work {"),
            StraySort.Refit => ("`refit`", "refit {"),
            _ => ("a stage", $"stage {title} {{"),
        };
        return new Finding(
            UnexpectedText.Id, $"{Excerpt.Of(text, verb)} stands outside of {block}", new SourceSpan(text.Path, verb), $"steps like this stand in {block}")
        {
            Help = $"write `{head}` before them, and `}}` behind the last",
            Fixes = [new Fix($"Wrap the steps in {block}", FixGrade.NeedsLook, Edits(text, steps, head))],
        };
    }

    private static ImmutableArray<TextEdit> Edits(SourceText text, TextSpan steps, string head)
    {
        var (first, last) = (text.LineAt(steps.Start), text.LineAt(steps.End));
        if (first == last)
        {
            return [Insert(text, steps.Start, head + " "), Insert(text, steps.End, " }")];
        }

        const string Level = "  ";
        var line = text.LineSpan(first);
        var indentation = text.Content[line.Start..(line.Start + Blanks(text, line))];
        var edits = ImmutableArray.CreateBuilder<TextEdit>();
        edits.Add(Insert(text, steps.Start, $"{head}\n{indentation}{Level}"));
        for (var next = first + 1; next <= last; next++)
        {
            var span = text.LineSpan(next);
            if (Blanks(text, span) is var blanks && blanks < span.Length)
            {
                edits.Add(Insert(text, span.Start + blanks, Level));
            }
        }

        // A comment behind the last step stays there.
        var end = text.LineSpan(last).End;
        var isComment = text.Content.AsSpan(steps.End, end - steps.End).TrimStart().StartsWith("//");
        edits.Add(Insert(text, isComment ? end : steps.End, $"\n{indentation}}}"));
        return edits.ToImmutable();
    }

    private static int Blanks(SourceText text, TextSpan line) =>
        text.Content.AsSpan(line.Start, line.Length).IndexOfAnyExcept(' ', '\t') is >= 0 and var first ? first : line.Length;

    private static TextEdit Insert(SourceText text, int position, string words) => new(new SourceSpan(text.Path, new TextSpan(position, 0)), words);
}
