namespace ProcScript.Jobs.Intake;

/// <summary>What a photo may be.</summary>
public static class PhotoFile
{
    /// <summary>The most bytes of a photo.</summary>
    public const int MostBytes = 20 << 20;

    /// <summary>The ending that belongs to what the first bytes say it is; null for what is no picture that every browser shows.</summary>
    /// <param name="content">The photo.</param>
    public static string? EndingOf(ReadOnlySpan<byte> content) =>
        content.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? "jpg"
        : content.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A]) ? "png"
        : content.Length >= 12 && content.StartsWith("RIFF"u8) && content[8..12].SequenceEqual("WEBP"u8) ? "webp"
        : null;
}
