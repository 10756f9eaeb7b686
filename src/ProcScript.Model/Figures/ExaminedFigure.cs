using System.Collections.Immutable;
using System.Security.Cryptography;

namespace ProcScript.Model.Figures;

/// <summary>What a picture turned out to be: made safe, or refused.</summary>
public sealed record ExaminedFigure
{
    /// <summary>Why it is refused.</summary>
    public FigureTrouble Trouble { get; private init; }

    /// <summary>What the system or the reader said of the trouble; empty where nothing.</summary>
    public string Detail { get; private init; } = "";

    /// <summary>What it is.</summary>
    public FigureFormat Format { get; private init; }

    /// <summary>How wide it is, in pixels, as it is seen.</summary>
    public int Width { get; private init; }

    /// <summary>How high it is, in pixels, as it is seen.</summary>
    public int Height { get; private init; }

    /// <summary>The picture without what a card has no use for; empty where it is refused.</summary>
    public ImmutableArray<byte> Content { get; private init; } = [];

    /// <summary>SHA-256 of <see cref="Content"/> in hexadecimal digits; empty where it is refused.</summary>
    public string Hash { get; private init; } = "";

    /// <summary>What was in it that could do harm and was left out, in words, each once.</summary>
    public ImmutableArray<string> Removed { get; private init; } = [];

    /// <summary>Whether it told where it was taken.</summary>
    public bool HadPosition { get; private init; }

    /// <summary>A picture that cannot stand on a card.</summary>
    public static ExaminedFigure Refused(FigureTrouble trouble, string detail = "") => new() { Trouble = trouble, Detail = detail };

    /// <summary>A picture that can.</summary>
    public static ExaminedFigure Of(FigureFormat format, int width, int height, byte[] content, IEnumerable<string> removed, bool hadPosition)
    {
        ArgumentNullException.ThrowIfNull(content);
        return new ExaminedFigure
        {
            Format = format,
            Width = width,
            Height = height,
            Content = ImmutableArray.Create(content),
            Hash = Convert.ToHexStringLower(SHA256.HashData(content)),
            Removed = [.. removed.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            HadPosition = hadPosition,
        };
    }
}

/// <summary>The forms that a picture may have.</summary>
public enum FigureFormat
{
    /// <summary>A photograph.</summary>
    Jpeg,

    /// <summary>A picture without loss.</summary>
    Png,

    /// <summary>Either of both.</summary>
    Webp,

    /// <summary>A line drawing.</summary>
    Svg,
}

/// <summary>Why a picture is refused.</summary>
public enum FigureTrouble
{
    /// <summary>It is not.</summary>
    None,

    /// <summary>There is no such file.</summary>
    Missing,

    /// <summary>The file is there and cannot be read.</summary>
    Unreadable,

    /// <summary>A symbolic link leads out of the library.</summary>
    LeadsOut,

    /// <summary>The file is larger than the shop's limit.</summary>
    TooManyBytes,

    /// <summary>It has more pixels than the shop's limit.</summary>
    TooManyPixels,

    /// <summary>It is no picture, of another sort, or of another sort than its name says.</summary>
    WrongType,

    /// <summary>It begins like a picture and does not go on like one.</summary>
    Damaged,
}
