using System.Globalization;

namespace ProcScript.Model.Figures;

/// <summary>
/// Looks into the bytes of a picture: what it is by its first bytes, how large by its header, and of it only what is needed to see it. No pixel
/// is decoded, so that no picture can cost more than reading it.
/// </summary>
internal static class FigureReader
{
    /// <summary>Reads a picture; whatever the bytes are, something comes of it.</summary>
    public static ExaminedFigure Read(string path, byte[] bytes, FigureLimits limits)
    {
        if (FigureFormats.ByContent(bytes) is not { } format)
        {
            return ExaminedFigure.Refused(FigureTrouble.WrongType, FigureFormats.Other(bytes));
        }

        if (FigureFormats.ByName(path) != format)
        {
            return ExaminedFigure.Refused(FigureTrouble.WrongType, Article(format));
        }

        try
        {
            return format switch
            {
                FigureFormat.Jpeg => JpegFigure.Read(bytes, limits),
                FigureFormat.Png => PngFigure.Read(bytes, limits),
                FigureFormat.Webp => WebpFigure.Read(bytes, limits),
                _ => SvgFigure.Read(bytes, limits),
            };
        }
        catch (FigureException failure)
        {
            return ExaminedFigure.Refused(failure.Trouble, failure.Message);
        }
    }

    /// <summary>What came of a photograph, as wide and as high as it is seen.</summary>
    public static ExaminedFigure Photograph(FigureFormat format, int width, int height, int orientation, byte[] content, bool hadPosition) =>
        ExifBlock.LiesOnItsSide(orientation)
            ? ExaminedFigure.Of(format, height, width, content, [], hadPosition)
            : ExaminedFigure.Of(format, width, height, content, [], hadPosition);

    /// <summary>Whether notes that programs write as text, such as XMP, have a position.</summary>
    public static bool TellPosition(ReadOnlySpan<byte> notes) => notes.IndexOf("GPSLatitude"u8) >= 0;

    /// <summary>Stops at a size that is zero or beyond the limit.</summary>
    /// <exception cref="FigureException">It is.</exception>
    public static void Measure(long width, long height, FigureLimits limits)
    {
        if (width <= 0 || height <= 0)
        {
            throw new FigureException(FigureTrouble.Damaged, "it has no size");
        }

        if (width > int.MaxValue || height > int.MaxValue || width * height > limits.Pixels)
        {
            throw new FigureException(FigureTrouble.TooManyPixels, string.Create(CultureInfo.InvariantCulture, $"{width} × {height} pixels"));
        }
    }

    private static string Article(FigureFormat format) => format == FigureFormat.Svg ? "an SVG, or another text with marks" : $"a {FigureFormats.Name(format)}";
}

/// <summary>A picture that cannot be taken, with the reason in words.</summary>
internal sealed class FigureException(FigureTrouble trouble, string message) : Exception(message)
{
    /// <summary>What kind of trouble it is.</summary>
    public FigureTrouble Trouble => trouble;
}
