using System.Buffers.Binary;
using System.Text;

namespace ProcScript.Model.Tests.Figures;

/// <summary>Pictures of 32 × 16 pixels with a secret in their notes, and a position where their form has a place for one.</summary>
internal static class PictureBytes
{
    public static byte[] Jpeg(string secret, int orientation = 1) =>
    [
        0xFF, 0xD8,
        .. Segment(0xE0, [.. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0]),
        .. Segment(0xE1, [.. "Exif\0\0"u8, .. Notes(secret, orientation)]),
        .. Segment(0xED, [.. "Photoshop 3.0\0"u8, .. Encoding.Latin1.GetBytes(secret)]),
        .. Segment(0xFE, Encoding.Latin1.GetBytes(secret)),
        .. Segment(0xDB, new byte[65]),
        .. Segment(0xC0, [8, 0, 16, 0, 32, 1, 1, 0x11, 0]),
        .. Segment(0xC4, new byte[20]),
        .. Segment(0xDA, [1, 1, 0, 0, 63, 0]),
        1, 2, 0xFF, 0, 3, 0xFF, 0xD0, 4,
        0xFF, 0xD9,
        .. Encoding.Latin1.GetBytes(secret),
    ];

    public static byte[] Png(string secret, int orientation = 1) =>
    [
        0x89, .. "PNG\r\n"u8, 0x1A, 0x0A,
        .. Chunk("IHDR", [0, 0, 0, 32, 0, 0, 0, 16, 8, 0, 0, 0, 0]),
        .. Chunk("tEXt", [.. "Comment\0"u8, .. Encoding.Latin1.GetBytes(secret)]),
        .. Chunk("eXIf", Notes(secret, orientation)),
        .. Chunk("IDAT", [1, 2, 3]),
        .. Chunk("IEND", []),
        .. Encoding.Latin1.GetBytes(secret),
    ];

    public static byte[] Webp(string secret, int orientation = 1)
    {
        byte[] body =
        [
            .. "WEBP"u8,
            .. Riff("VP8X", [0x0C, 0, 0, 0, 31, 0, 0, 15, 0, 0]),
            .. Riff("VP8L", [0x2F, 31, 0xC0, 3, 0, 9]),
            .. Riff("EXIF", Notes(secret, orientation)),
            .. Riff("XMP ", Encoding.Latin1.GetBytes(secret)),
        ];
        return [.. "RIFF"u8, .. Little(body.Length), .. body];
    }

    public static byte[] Svg(string secret) => Encoding.UTF8.GetBytes(
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"32\" height=\"16\"><!-- {secret} --><metadata>{secret}</metadata><rect width=\"9\" height=\"9\"/></svg>");

    /// <summary>What a camera writes: the way up, a position, and a text.</summary>
    private static byte[] Notes(string secret, int orientation) =>
    [
        (byte)'M', (byte)'M', 0, 42, 0, 0, 0, 8, 0, 2,
        0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0,
        0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 38,
        0, 0, 0, 0,
        .. Encoding.Latin1.GetBytes(secret),
    ];

    private static byte[] Segment(byte marker, byte[] data) => [0xFF, marker, (byte)((data.Length + 2) >> 8), (byte)(data.Length + 2), .. data];

    private static byte[] Chunk(string name, byte[] data)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, data.Length);
        return [.. length, .. Encoding.Latin1.GetBytes(name), .. data, 0, 0, 0, 0];
    }

    private static byte[] Riff(string name, byte[] data) => [.. Encoding.Latin1.GetBytes(name), .. Little(data.Length), .. data, .. data.Length % 2 == 1 ? new byte[1] : []];

    private static byte[] Little(int number)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, number);
        return bytes;
    }
}
