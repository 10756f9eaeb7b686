using System.Collections.Immutable;

namespace ProcScript.Syntax.Text;

/// <summary>The text of one file with its path inside the library, and the way from offsets to lines and columns.</summary>
public sealed class SourceText
{
    private readonly ImmutableArray<int> _lineStarts;

    /// <summary>Takes a text; <paramref name="path"/> has forward slashes and is relative to the library root.</summary>
    public SourceText(string path, string content)
    {
        Path = path;
        Content = content;
        _lineStarts = FindLineStarts(content);
    }

    /// <summary>The path inside the library, with forward slashes.</summary>
    public string Path { get; }

    /// <summary>The characters.</summary>
    public string Content { get; }

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
        return (line, offset - _lineStarts[line]);
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

        return TextSpan.FromBounds(start, end);
    }

    /// <summary>The characters of a span.</summary>
    public string Slice(TextSpan span) => Content.Substring(span.Start, span.Length);

    private static ImmutableArray<int> FindLineStarts(string content)
    {
        var starts = ImmutableArray.CreateBuilder<int>();
        starts.Add(0);
        for (var i = 0; i < content.Length; i++)
        {
            if (content[i] == '\n' || (content[i] == '\r' && (i + 1 == content.Length || content[i + 1] != '\n')))
            {
                starts.Add(i + 1);
            }
        }

        return starts.ToImmutable();
    }
}
