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
        return line.Start + UnitsIn(text.Content.AsSpan(line.Start, line.Length), position.Character, encoding);
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
    public TextSpan SpanOf(Protocol.Range range) => Between(OffsetOf(range.Start), OffsetOf(range.End));

    /// <summary>The span of a range in a text whose lines nobody has counted: one that changes the next moment.</summary>
    public static TextSpan SpanIn(string text, Protocol.Range range, PositionEncoding encoding) =>
        Between(OffsetIn(text, range.Start, encoding), OffsetIn(text, range.End, encoding));

    private static TextSpan Between(int one, int other) => TextSpan.FromBounds(Math.Min(one, other), Math.Max(one, other));

    private static int OffsetIn(string text, Position position, PositionEncoding encoding)
    {
        if (position.Line < 0)
        {
            return 0;
        }

        var start = 0;
        for (var line = 0; line < position.Line; line++)
        {
            var found = text.AsSpan(start).IndexOfAny('\n', '\r');
            if (found < 0)
            {
                return text.Length;
            }

            start += found + (text.AsSpan(start + found).StartsWith("\r\n") ? 2 : 1);
        }

        var content = text.AsSpan(start);
        content = content.IndexOfAny('\n', '\r') is >= 0 and var length ? content[..length] : content;
        return start + UnitsIn(content, position.Character, encoding);
    }

    private static int UnitsIn(ReadOnlySpan<char> line, int characters, PositionEncoding encoding) =>
        encoding == PositionEncoding.Utf16 ? Math.Clamp(characters, 0, line.Length) : UnitsIn(line, characters);

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
