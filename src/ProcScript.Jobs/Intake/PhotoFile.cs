namespace ProcScript.Jobs.Intake;

/// <summary>What a photo may be.</summary>
public static class PhotoFile
{
    /// <summary>The most bytes of a photo.</summary>
    public const int MostBytes = 20 << 20;

    /// <summary>The most photos of a job: nobody looks through more, and whoever has got at a tablet fills no disk.</summary>
    public const int MostOfJob = 300;

    /// <summary>Why a job takes no photo more; null where it takes it.</summary>
    /// <param name="kept">The paths of the photos that it has.</param>
    /// <param name="path">The path of the one that is to be added; what is there already is not added again.</param>
    public static string? Refusal(IReadOnlyCollection<string> kept, string path)
    {
        ArgumentNullException.ThrowIfNull(kept);
        return kept.Count < MostOfJob || kept.Contains(path) ? null
            : $"the job has {kept.Count} photos, and {MostOfJob} are the most: say it in a note, or keep the photo elsewhere and note where.";
    }

    /// <summary>The ending that belongs to what the first bytes say it is; null for what is no picture that every browser shows.</summary>
    /// <param name="content">The photo.</param>
    public static string? EndingOf(ReadOnlySpan<byte> content) =>
        content.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? "jpg"
        : content.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A]) ? "png"
        : content.Length >= 12 && content.StartsWith("RIFF"u8) && content[8..12].SequenceEqual("WEBP"u8) ? "webp"
        : null;
}
