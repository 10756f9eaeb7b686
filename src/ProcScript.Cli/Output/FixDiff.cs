using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Output;

/// <summary>What a fix changes in one file, as lines that go and lines that come.</summary>
/// <param name="Path">The file in the library.</param>
/// <param name="Lines">The lines, from the top; none where the change is too large to show.</param>
internal sealed record FixDiff(string Path, ImmutableArray<FixDiff.Line> Lines)
{
    private const int MostCharacters = 4000;
    private const int MostLines = 16;

    /// <summary>The highest number among the lines, or 0.</summary>
    public int LastLine => Lines.IsEmpty ? 0 : Lines.Max(line => line.Number);

    /// <summary>What a fix changes, a file at a time.</summary>
    public static IEnumerable<FixDiff> Of(Fix fix, Func<string, SourceText?> sources) =>
        from file in fix.Edits.GroupBy(edit => edit.Place.Path, StringComparer.Ordinal)
        let source = sources(file.Key)
        where source is not null
        select new FixDiff(file.Key, Compare(source, [.. file.OrderBy(edit => edit.Place.Span.Start)]));

    private static ImmutableArray<Line> Compare(SourceText source, ImmutableArray<TextEdit> edits)
    {
        var lines = ImmutableArray.CreateBuilder<Line>();
        for (var i = 0; i < edits.Length;)
        {
            // Edits that share a line are one change.
            var first = source.LineAt(edits[i].Place.Span.Start);
            var last = source.LineAt(edits[i].Place.Span.End);
            var next = i + 1;
            while (next < edits.Length && source.LineAt(edits[next].Place.Span.Start) <= last)
            {
                last = Math.Max(last, source.LineAt(edits[next].Place.Span.End));
                next++;
            }

            var span = TextSpan.FromBounds(source.LineSpan(first).Start, source.LineSpan(last).End);
            if (span.Length > MostCharacters)
            {
                return [];
            }

            lines.AddRange(Compare(first, SplitLines(source.Slice(span)), SplitLines(TextEdits.Apply(source.Content, span, edits[i..next]))));
            i = next;
        }

        return lines.Count > MostLines ? [] : lines.ToImmutable();
    }

    private static IEnumerable<Line> Compare(int first, string[] before, string[] after)
    {
        var head = 0;
        while (head < before.Length && head < after.Length && before[head] == after[head])
        {
            head++;
        }

        var tail = 0;
        while (tail < before.Length - head && tail < after.Length - head && before[^(tail + 1)] == after[^(tail + 1)])
        {
            tail++;
        }

        var number = first + head + 1;
        return before[head..^tail].Select((text, i) => new Line(number + i, IsNew: false, text))
            .Concat(after[head..^tail].Select((text, i) => new Line(number + i, IsNew: true, text)));
    }

    private static string[] SplitLines(string text) => text.Split(["\r\n", "\n", "\r"], StringSplitOptions.None);

    /// <summary>A line of the change.</summary>
    /// <param name="Number">Its number in the file, counted from 1: before the change for one that goes, after it for one that comes.</param>
    /// <param name="IsNew">Whether it comes.</param>
    /// <param name="Text">The line.</param>
    internal readonly record struct Line(int Number, bool IsNew, string Text);
}
