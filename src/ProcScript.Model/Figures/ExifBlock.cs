using System.Buffers.Binary;

namespace ProcScript.Model.Figures;

/// <summary>
/// What cameras write down beside a picture, as Exif 2.32 lays it out. Two things are looked for: which way up the picture is, which is kept in
/// a block of its own, and whether a position is in it.
/// </summary>
internal static class ExifBlock
{
    private const int OrientationTag = 0x0112;
    private const int PositionTag = 0x8825;
    private const int EntrySize = 12;

    /// <summary>Reads a block that begins with its byte order; whatever is wrong with it, there is nothing in it.</summary>
    public static (int Orientation, bool HasPosition) Read(ReadOnlySpan<byte> block)
    {
        var isLittle = block is [(byte)'I', (byte)'I', ..];
        if (block.Length < 14 || !(isLittle || block is [(byte)'M', (byte)'M', ..]))
        {
            return (1, false);
        }

        var (orientation, hasPosition) = (1, false);
        var start = isLittle ? BinaryPrimitives.ReadUInt32LittleEndian(block[4..]) : BinaryPrimitives.ReadUInt32BigEndian(block[4..]);
        if (start > block.Length - 2)
        {
            return (1, false);
        }

        var entries = block[(int)start..];
        var count = Short(entries, isLittle);
        for (var i = 0; i < count && 2 + ((i + 1) * EntrySize) <= entries.Length; i++)
        {
            var entry = entries.Slice(2 + (i * EntrySize), EntrySize);
            var tag = Short(entry, isLittle);
            hasPosition |= tag == PositionTag;
            orientation = tag == OrientationTag && Short(entry[8..], isLittle) is >= 1 and <= 8 and var way ? way : orientation;
        }

        return (orientation, hasPosition);
    }

    /// <summary>A block that says which way up a picture is, and nothing else.</summary>
    public static byte[] Of(int orientation) =>
        [(byte)'M', (byte)'M', 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0, 0, 0, 0, 0];

    /// <summary>Whether a picture that is turned so is seen with its width for its height.</summary>
    public static bool LiesOnItsSide(int orientation) => orientation >= 5;

    private static int Short(ReadOnlySpan<byte> bytes, bool isLittle) =>
        isLittle ? BinaryPrimitives.ReadUInt16LittleEndian(bytes) : BinaryPrimitives.ReadUInt16BigEndian(bytes);
}
