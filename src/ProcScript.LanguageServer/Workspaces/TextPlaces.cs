using System.Text;
using ProcScript.LanguageServer.Protocol;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>The way between the offsets of a text and the positions of the protocol.</summary>
/// <param name="text">The text.</param>
/// <param name="encoding">What characters count.</param>
internal readonly struct TextPlaces(SourceText text, PositionEncoding encoding)
{
    /// <summary>The text.</summary>
    public SourceText Text => text;

    /// <summary>The offset of a position; one beyond its line is the end of that line, one beyond the text the end of the text.</summary>
    public int OffsetOf(Position position)
    {
        if (position.Line < 0)
        {
            return 0;
        }

        if (position.Line >= text.LineCount)
        {
            return text.Content.Length;
        }

        var line = text.LineSpan(position.Line);
        var content = text.Content.AsSpan(line.Start, line.Length);
        return line.Start + (encoding == PositionEncoding.Utf16 ? Math.Clamp(position.Character, 0, line.Length) : UnitsIn(content, position.Character));
    }

    /// <summary>The position of an offset.</summary>
    public Position PositionOf(int offset)
    {
        var (line, column) = text.PositionAt(offset);
        return new Position(line, encoding == PositionEncoding.Utf16 ? column : Encoding.UTF8.GetByteCount(text.Content.AsSpan(offset - column, column)));
    }

    /// <summary>The range of a span.</summary>
    public Protocol.Range RangeOf(TextSpan span) => new(PositionOf(span.Start), PositionOf(span.End));

    /// <summary>The span of a range; the two ends may come in any order.</summary>
    public TextSpan SpanOf(Protocol.Range range)
    {
        var (start, end) = (OffsetOf(range.Start), OffsetOf(range.End));
        return TextSpan.FromBounds(Math.Min(start, end), Math.Max(start, end));
    }

    /// <summary>How many UTF-16 code units the first so many bytes are; a character that they split does not count.</summary>
    private static int UnitsIn(ReadOnlySpan<char> line, int bytes)
    {
        var units = 0;
        while (units < line.Length && Rune.DecodeFromUtf16(line[units..], out var rune, out var length) is var status && bytes > 0)
        {
            bytes -= status == System.Buffers.OperationStatus.Done ? rune.Utf8SequenceLength : Rune.ReplacementChar.Utf8SequenceLength;
            if (bytes < 0)
            {
                break;
            }

            units += length;
        }

        return units;
    }
}
