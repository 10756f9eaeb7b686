using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Output;

/// <summary>A line of a source as it is printed, and the way from its offsets to columns on the screen.</summary>
internal sealed class PrintedLine
{
    /// <summary>The most code units of a line that are shown: some files are one line.</summary>
    public const int Longest = 200;

    private const int Before = 60;
    private const string Omitted = "…";

    private readonly int _start;
    private readonly int[] _columns;

    private PrintedLine(string text, int start, int[] columns)
    {
        Text = text;
        _start = start;
        _columns = columns;
    }

    /// <summary>The printable text.</summary>
    public string Text { get; }

    /// <summary>Prints a line; of a long one, the stretch around <paramref name="focus"/>.</summary>
    public static PrintedLine Of(SourceText source, int line, int focus)
    {
        var whole = source.LineSpan(line);
        var shown = Shown(source.Content, whole, focus);
        var text = source.Content.AsSpan(shown.Start, shown.Length);
        var columns = new int[shown.Length + 1];
        var head = shown.Start > whole.Start ? Omitted : "";
        var printed = new System.Text.StringBuilder(head);
        var column = head.Length;
        for (var i = 0; i < text.Length;)
        {
            var length = PrintableText.FirstCharacterLength(text[i..]);
            var character = PrintableText.Of(text.Slice(i, length));
            columns.AsSpan(i, length).Fill(column);
            printed.Append(character);
            column += PrintableText.WidthOf(character);
            i += length;
        }

        columns[shown.Length] = column;
        printed.Append(shown.End < whole.End ? Omitted : "");
        return new PrintedLine(printed.ToString(), shown.Start, columns);
    }

    /// <summary>The first column, counted from 0, of the character at an offset; an offset outside what is shown goes to its edge.</summary>
    public int ColumnOf(int offset) => _columns[Index(offset)];

    /// <summary>The column after the last character that lies before <paramref name="end"/>, be it only in part.</summary>
    public int ColumnAfter(int end)
    {
        var index = Index(end);
        if (index == 0)
        {
            return _columns[0];
        }

        // An end inside a character, or after one that has no width of its own, takes in the whole character.
        var last = _columns[index - 1];
        while (index < _columns.Length - 1 && _columns[index] == last)
        {
            index++;
        }

        return _columns[index];
    }

    private int Index(int offset) => Math.Clamp(offset - _start, 0, _columns.Length - 1);

    private static TextSpan Shown(string content, TextSpan line, int focus)
    {
        if (line.Length <= Longest)
        {
            return line;
        }

        var start = Math.Clamp(focus - Before, line.Start, line.End - Longest);
        var end = Math.Min(start + Longest, line.End);
        start -= start > line.Start && char.IsLowSurrogate(content[start]) ? 1 : 0;
        end += end < line.End && char.IsLowSurrogate(content[end]) ? 1 : 0;
        return TextSpan.FromBounds(start, end);
    }
}
