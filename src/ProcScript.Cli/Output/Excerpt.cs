using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Output;

/// <summary>The places of one finding in one file: the lines that matter with marks under them.</summary>
/// <param name="path">The file in the library.</param>
/// <param name="source">Its text, or null where it could not be read.</param>
/// <param name="places">The places, the one to name first.</param>
internal sealed class Excerpt(string path, SourceText? source, IReadOnlyList<ExcerptPlace> places)
{
    private const string Gap = "...";

    /// <summary>The file in the library.</summary>
    public string Path => path;

    /// <summary>The last line that is shown, counted from 1; 0 where none is.</summary>
    public int LastLine => source is null ? 0 : places.Max(place => LineOf(source, place)) + 1;

    /// <summary>The excerpts of a finding, the file with the primary place first.</summary>
    public static IReadOnlyList<Excerpt> Of(Finding finding, Ink ink, Func<string, SourceText?> sources)
    {
        var primary = new ExcerptPlace(finding.Primary, IsPrimary: true, PrintableText.Of(finding.Label), ink);
        var related = finding.Related.Select(place => new ExcerptPlace(place.Place, IsPrimary: false, PrintableText.Of(place.Label), Ink.Frame));
        return
        [
            .. related.Prepend(primary)
                .GroupBy(place => place.Span.Path, StringComparer.Ordinal)
                .Select(file => new Excerpt(file.Key, sources(file.Key), [.. file])),
        ];
    }

    /// <summary>The line and column to name, counted from 1; empty where the file has no text.</summary>
    public string Position()
    {
        if (source is null)
        {
            return "";
        }

        var (line, column) = source.PositionAt(Clamp(source, places[0].Span.Span.Start));
        return $":{line + 1}:{column + 1}";
    }

    /// <summary>Writes the lines.</summary>
    public void Write(Terminal terminal, Gutter gutter)
    {
        if (source is null)
        {
            return;
        }

        var previous = -1;
        foreach (var line in places.GroupBy(place => LineOf(source, place)).OrderBy(line => line.Key))
        {
            WriteBetween(terminal, gutter, previous, line.Key);
            WriteLine(terminal, gutter, line.Key, [.. line]);
            previous = line.Key;
        }
    }

    private void WriteBetween(Terminal terminal, Gutter gutter, int previous, int next)
    {
        if (previous < 0 || next == previous + 1)
        {
            return;
        }

        if (next == previous + 2)
        {
            terminal.WriteLine(gutter.Number(previous + 2), new Piece(PrintedLine.Of(source!, previous + 1, 0).Text));
        }
        else
        {
            terminal.WriteLine(new Piece(Gap, Ink.Frame));
        }
    }

    private void WriteLine(Terminal terminal, Gutter gutter, int line, IReadOnlyList<ExcerptPlace> onLine)
    {
        var focus = onLine.MaxBy(place => place.IsPrimary).Span.Span.Start;
        var printed = PrintedLine.Of(source!, line, focus);
        terminal.WriteLine(gutter.Number(line + 1), new Piece(printed.Text));
        foreach (var row in MarkRows.Of([.. onLine.Select(place => MarkOf(printed, line, place))]))
        {
            terminal.WriteLine([gutter.Bar, .. row]);
        }
    }

    /// <summary>A place that runs over several lines is marked on its first.</summary>
    private Mark MarkOf(PrintedLine printed, int line, ExcerptPlace place)
    {
        var end = Math.Min(place.Span.Span.End, source!.LineSpan(line).End);
        var start = printed.ColumnOf(place.Span.Span.Start);
        return new Mark(start, Math.Max(start + 1, printed.ColumnAfter(end)), place.IsPrimary, place.Label, place.Ink);
    }

    private static int LineOf(SourceText source, ExcerptPlace place) => source.LineAt(Clamp(source, place.Span.Span.Start));

    private static int Clamp(SourceText source, int offset) => Math.Clamp(offset, 0, source.Content.Length);
}

/// <summary>A place to mark.</summary>
/// <param name="Span">Where it is.</param>
/// <param name="IsPrimary">Whether it says where to act.</param>
/// <param name="Label">The printable label; may be empty.</param>
/// <param name="Ink">The colour of the mark.</param>
internal readonly record struct ExcerptPlace(SourceSpan Span, bool IsPrimary, string Label, Ink Ink);
