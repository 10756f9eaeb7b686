using System.Collections.Immutable;

namespace ProcScript.Syntax.Text;

/// <summary>The text of one file with its path inside the library, and the way from offsets to lines and columns.</summary>
public sealed class SourceText
{
    private readonly ImmutableArray<int> _lineStarts;
    private readonly ImmutableArray<TextSpan> _slack;
    private readonly string _written;

    /// <summary>Takes a text; <paramref name="path"/> has forward slashes and is relative to the library root.</summary>
    public SourceText(string path, string content)
        : this(path, content, [], content)
    {
    }

    /// <summary>Takes a text with blanks at the ends of lines that are not the author's; see <see cref="SlackLayout"/>.</summary>
    internal SourceText(string path, string content, ImmutableArray<TextSpan> slack, string written)
    {
        Path = path;
        Content = content;
        _slack = slack;
        _written = written;
        _lineStarts = FindLineStarts(content);
    }

    /// <summary>The path inside the library, with forward slashes.</summary>
    public string Path { get; }

    /// <summary>The characters.</summary>
    public string Content { get; }

    /// <summary>The characters as the author wrote them: <see cref="Content"/> without the blanks that only keep offsets steady.</summary>
    public string Written => _written;

    /// <summary>How many lines the text has; an empty text has one.</summary>
    public int LineCount => _lineStarts.Length;

    /// <summary>The line, counted from 0, on which <paramref name="offset"/> lies.</summary>
    public int LineAt(int offset)
    {
        var found = _lineStarts.BinarySearch(offset);
        return found >= 0 ? found : ~found - 1;
    }

    /// <summary>The line and the column in UTF-16 code units, both counted from 0.</summary>
    public (int Line, int Column) PositionAt(int offset)
    {
        var line = LineAt(offset);
        return (line, BeforeSlack(offset) - _lineStarts[line]);
    }

    /// <summary>The span of a line without its line break.</summary>
    public TextSpan LineSpan(int line)
    {
        var start = _lineStarts[line];
        var end = line + 1 < _lineStarts.Length ? _lineStarts[line + 1] : Content.Length;
        while (end > start && Content[end - 1] is '\n' or '\r')
        {
            end--;
        }

        return TextSpan.FromBounds(start, BeforeSlack(end));
    }

    /// <summary>The characters of a span.</summary>
    public string Slice(TextSpan span) => Content.Substring(span.Start, span.Length);

    /// <summary>The characters of a span for a sentence: any run of blanks and line ends is one blank.</summary>
    public string Quote(TextSpan span) => string.Join(' ', Slice(span).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>Where an offset lies in the text as written: the blanks at the end of a line are not there.</summary>
    private int BeforeSlack(int offset)
    {
        var (low, high) = (0, _slack.Length - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var slack = _slack[middle];
            if (slack.Touches(offset))
            {
                return slack.Start;
            }

            (low, high) = slack.Start > offset ? (low, middle - 1) : (middle + 1, high);
        }

        return offset;
    }

    private static ImmutableArray<int> FindLineStarts(string content)
    {
        var starts = ImmutableArray.CreateBuilder<int>(1 + (content.Length / 32));
        starts.Add(0);
        var rest = content.AsSpan();
        var at = 0;
        while (rest.IndexOfAny('\n', '\r') is >= 0 and var found)
        {
            var length = rest[found] == '\r' && found + 1 < rest.Length && rest[found + 1] == '\n' ? 2 : 1;
            at += found + length;
            rest = rest[(found + length)..];
            starts.Add(at);
        }

        return starts.DrainToImmutable();
    }
}
