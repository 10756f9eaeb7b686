using System.Buffers.Binary;
using System.Text;

namespace ProcScript.Model.Figures;

/// <summary>
/// A WebP, chunk by chunk (RFC 9649). Kept is what the picture is drawn from; notes of cameras and programs and colour profiles go. A moving one
/// is refused, for paper does not move.
/// </summary>
internal static class WebpFigure
{
    private const int HeaderSize = 12;
    private const byte HasAlpha = 0x10;
    private const byte HasExif = 0x08;

    /// <summary>Reads it.</summary>
    public static ExaminedFigure Read(ReadOnlySpan<byte> bytes, FigureLimits limits)
    {
        var image = new MemoryStream(bytes.Length);
        var (width, height, hasImage, hasAlpha, orientation, hadPosition) = (0, 0, false, false, 1, false);
        (int Width, int Height)? canvas = null;
        var at = HeaderSize;
        while (at + 8 <= bytes.Length)
        {
            var length = BinaryPrimitives.ReadUInt32LittleEndian(bytes[(at + 4)..]);
            if (length > bytes.Length - at - 8)
            {
                throw Damaged();
            }

            var name = Encoding.Latin1.GetString(bytes.Slice(at, 4));
            var data = bytes.Slice(at + 8, (int)length);
            at += 8 + (int)length + ((int)length & 1);
            switch (name)
            {
                case "VP8X" when data.Length >= 10:
                    canvas = (1 + Three(data[4..]), 1 + Three(data[7..]));
                    hasAlpha = (data[0] & HasAlpha) != 0;
                    FigureReader.Measure(canvas.Value.Width, canvas.Value.Height, limits);
                    break;
                case "VP8 " or "VP8L" when !hasImage:
                    (width, height) = name == "VP8L" ? Lossless(data) : Lossy(data);
                    FigureReader.Measure(width, height, limits);
                    hasImage = true;
                    Write(image, name, data);
                    break;
                case "ALPH" when !hasImage:
                    Write(image, name, data);
                    break;
                case "ANIM" or "ANMF":
                    throw new FigureException(FigureTrouble.WrongType, "a moving picture");
                case "EXIF":
                    (orientation, var position) = ExifBlock.Read(data.StartsWith("Exif\0\0"u8) ? data[6..] : data);
                    hadPosition |= position;
                    break;
                case "XMP ":
                    hadPosition |= FigureReader.TellPosition(data);
                    break;
            }
        }

        if (!hasImage || (canvas is { } size && size != (width, height)))
        {
            throw Damaged();
        }

        var content = Whole(image.ToArray(), width, height, canvas is not null && hasAlpha, orientation);
        return FigureReader.Photograph(FigureFormat.Webp, width, height, orientation, content, hadPosition);
    }

    private static byte[] Whole(byte[] image, int width, int height, bool hasAlpha, int orientation)
    {
        var body = new MemoryStream();
        body.Write("WEBP"u8);
        if (hasAlpha || orientation != 1)
        {
            var flags = (byte)((hasAlpha ? HasAlpha : 0) | (orientation != 1 ? HasExif : 0));
            var (w, h) = (width - 1, height - 1);
            Write(body, "VP8X", [flags, 0, 0, 0, (byte)w, (byte)(w >> 8), (byte)(w >> 16), (byte)h, (byte)(h >> 8), (byte)(h >> 16)]);
        }

        body.Write(image);
        if (orientation != 1)
        {
            Write(body, "EXIF", ExifBlock.Of(orientation));
        }

        var whole = new byte[8 + body.Length];
        "RIFF"u8.CopyTo(whole);
        BinaryPrimitives.WriteUInt32LittleEndian(whole.AsSpan(4), (uint)body.Length);
        body.ToArray().CopyTo(whole, 8);
        return whole;
    }

    /// <summary>The size in the header of a frame, RFC 6386, section 9.1.</summary>
    private static (int Width, int Height) Lossy(ReadOnlySpan<byte> data) => data is [_, _, _, 0x9D, 0x01, 0x2A, _, _, _, _, ..]
        ? (BinaryPrimitives.ReadUInt16LittleEndian(data[6..]) & 0x3FFF, BinaryPrimitives.ReadUInt16LittleEndian(data[8..]) & 0x3FFF)
        : throw Damaged();

    /// <summary>The size in the header of a picture without loss, RFC 9649, section 3.4.</summary>
    private static (int Width, int Height) Lossless(ReadOnlySpan<byte> data)
    {
        if (data is not [0x2F, _, _, _, _, ..])
        {
            throw Damaged();
        }

        var bits = BinaryPrimitives.ReadUInt32LittleEndian(data[1..]);
        return (1 + (int)(bits & 0x3FFF), 1 + (int)((bits >> 14) & 0x3FFF));
    }

    private static int Three(ReadOnlySpan<byte> bytes) => bytes[0] | (bytes[1] << 8) | (bytes[2] << 16);

    private static void Write(MemoryStream into, string name, ReadOnlySpan<byte> data)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(number, (uint)data.Length);
        into.Write(Encoding.Latin1.GetBytes(name));
        into.Write(number);
        into.Write(data);
        if ((data.Length & 1) == 1)
        {
            into.WriteByte(0);
        }
    }

    private static FigureException Damaged() => new(FigureTrouble.Damaged, "it begins like a WebP and does not go on like one");
}
