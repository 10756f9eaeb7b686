using System.Buffers.Binary;

namespace ProcScript.Model.Figures;

/// <summary>
/// A JPEG, segment by segment (ITU-T T.81, Annex B). Kept is what the picture is drawn from and Adobe's mark of its colours; notes of cameras and
/// programs, thumbnails, comments, colour profiles and whatever follows the picture go.
/// </summary>
internal static class JpegFigure
{
    // A picture that is built up in more passes than any camera makes is meant to keep a reader busy.
    private const int MostScans = 100;

    /// <summary>Reads it.</summary>
    public static ExaminedFigure Read(ReadOnlySpan<byte> bytes, FigureLimits limits)
    {
        var kept = new MemoryStream(bytes.Length);
        var (width, height, scans, orientation, hadPosition) = (0, 0, 0, 1, false);
        var at = 2;
        while (true)
        {
            var marker = Marker(bytes, ref at);
            if (marker == 0xD9)
            {
                break;
            }

            if (at + 2 > bytes.Length || BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]) is var length && (length < 2 || at + length > bytes.Length))
            {
                throw Damaged();
            }

            var segment = bytes.Slice(at, length);
            at += length;
            switch (marker)
            {
                case 0xE1 when segment[2..].StartsWith("Exif\0\0"u8):
                    var (way, position) = ExifBlock.Read(segment[8..]);
                    (orientation, hadPosition) = (way, hadPosition || position);
                    continue;
                case 0xE1:
                    hadPosition |= FigureReader.TellPosition(segment);
                    continue;
                case 0xEE when segment[2..].StartsWith("Adobe"u8):
                    break;
                case (>= 0xE0 and <= 0xEF) or 0xFE:
                    continue;
                case (>= 0xC0 and <= 0xCF) and not (0xC4 or 0xC8 or 0xCC):
                    if (segment.Length < 8)
                    {
                        throw Damaged();
                    }

                    (height, width) = (BinaryPrimitives.ReadUInt16BigEndian(segment[3..]), BinaryPrimitives.ReadUInt16BigEndian(segment[5..]));
                    FigureReader.Measure(width, height, limits);
                    break;
                case 0xC4 or 0xCC or 0xDB or 0xDD or 0xDA:
                    break;
                default:
                    throw Damaged();
            }

            kept.Write([0xFF, marker]);
            kept.Write(segment);
            if (marker == 0xDA)
            {
                if (width == 0 || ++scans > MostScans)
                {
                    throw Damaged();
                }

                var end = EndOfScan(bytes, at);
                kept.Write(bytes[at..end]);
                at = end;
            }
        }

        if (scans == 0)
        {
            throw Damaged();
        }

        byte[] start = orientation == 1 ? [0xFF, 0xD8] : [0xFF, 0xD8, 0xFF, 0xE1, 0, 34, .. "Exif\0\0"u8, .. ExifBlock.Of(orientation)];
        byte[] content = [.. start, .. kept.ToArray(), 0xFF, 0xD9];
        return FigureReader.Photograph(FigureFormat.Jpeg, width, height, orientation, content, hadPosition);
    }

    /// <summary>The next marker; any number of 0xFF may stand before it. A picture that was cut off ends where it was.</summary>
    private static byte Marker(ReadOnlySpan<byte> bytes, ref int at)
    {
        if (at >= bytes.Length)
        {
            return 0xD9;
        }

        if (bytes[at] != 0xFF)
        {
            throw Damaged();
        }

        while (at < bytes.Length && bytes[at] == 0xFF)
        {
            at++;
        }

        return at < bytes.Length ? bytes[at++] : (byte)0xD9;
    }

    /// <summary>Where the drawn lines of a pass end: at a marker that is neither a stuffed 0xFF nor a restart.</summary>
    private static int EndOfScan(ReadOnlySpan<byte> bytes, int from)
    {
        var at = from;
        while (true)
        {
            var next = bytes[at..].IndexOf((byte)0xFF);
            if (next < 0 || at + next + 1 >= bytes.Length)
            {
                return bytes.Length;
            }

            at += next;
            if (bytes[at + 1] is not (0 or (>= 0xD0 and <= 0xD7)))
            {
                return at;
            }

            at += 2;
        }
    }

    private static FigureException Damaged() => new(FigureTrouble.Damaged, "it begins like a JPEG and does not go on like one");
}
