using System.Buffers.Binary;
using System.Text;

namespace ProcScript.Model.Figures;

/// <summary>
/// A PNG, chunk by chunk (ISO/IEC 15948). Kept is what the picture is drawn from; texts, times, notes of cameras, colour profiles and the other
/// pictures of a moving one go.
/// </summary>
internal static class PngFigure
{
    private const int SignatureSize = 8;
    private const int Around = 12;

    /// <summary>Reads it.</summary>
    public static ExaminedFigure Read(ReadOnlySpan<byte> bytes, FigureLimits limits)
    {
        var kept = new MemoryStream(bytes.Length);
        kept.Write(bytes[..SignatureSize]);
        var (width, height, hasData, hasEnd, orientation, hadPosition) = (0L, 0L, false, false, 1, false);
        var at = SignatureSize;
        while (!hasEnd)
        {
            if (at + Around > bytes.Length || BinaryPrimitives.ReadUInt32BigEndian(bytes[at..]) is var length && length > bytes.Length - at - Around)
            {
                throw Damaged();
            }

            var chunk = bytes.Slice(at, (int)length + Around);
            var data = chunk[8..^4];
            at += chunk.Length;
            var name = Encoding.Latin1.GetString(chunk.Slice(4, 4));
            if ((name == "IHDR") != (width == 0))
            {
                throw Damaged();
            }

            switch (name)
            {
                case "IHDR" when data.Length == 13:
                    (width, height) = (BinaryPrimitives.ReadUInt32BigEndian(data), BinaryPrimitives.ReadUInt32BigEndian(data[4..]));
                    FigureReader.Measure(width, height, limits);
                    break;
                case "IDAT":
                    hasData = true;
                    break;
                case "IEND" when hasData:
                    hasEnd = true;
                    break;
                case "PLTE" or "tRNS" or "gAMA" or "cHRM" or "sRGB" or "sBIT" or "bKGD":
                    break;
                case "eXIf":
                    (orientation, var position) = ExifBlock.Read(data);
                    hadPosition |= position;
                    continue;
                case "tEXt" or "zTXt" or "iTXt":
                    hadPosition |= FigureReader.TellPosition(data);
                    continue;
                case var other when char.IsAsciiLetterLower(other[0]):
                    continue;
                default:
                    throw Damaged();
            }

            if (hasEnd && orientation != 1)
            {
                Write(kept, "eXIf"u8, ExifBlock.Of(orientation));
            }

            kept.Write(chunk);
        }

        return FigureReader.Photograph(FigureFormat.Png, (int)width, (int)height, orientation, kept.ToArray(), hadPosition);
    }

    private static void Write(MemoryStream kept, ReadOnlySpan<byte> name, ReadOnlySpan<byte> data)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(number, (uint)data.Length);
        kept.Write(number);
        byte[] summed = [.. name, .. data];
        kept.Write(summed);
        BinaryPrimitives.WriteUInt32BigEndian(number, Sum(summed));
        kept.Write(number);
    }

    /// <summary>The cyclic redundancy check of the standard's Annex D.</summary>
    private static uint Sum(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var one in bytes)
        {
            sum ^= one;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) == 1 ? 0xEDB88320 ^ (sum >> 1) : sum >> 1;
            }
        }

        return ~sum;
    }

    private static FigureException Damaged() => new(FigureTrouble.Damaged, "it begins like a PNG and does not go on like one");
}
