namespace ProcScript.Model.Figures;

/// <summary>The forms of pictures by their names and by the bytes that they begin with.</summary>
public static class FigureFormats
{
    /// <summary>The media type.</summary>
    public static string MediaType(FigureFormat format) => format switch
    {
        FigureFormat.Jpeg => "image/jpeg",
        FigureFormat.Png => "image/png",
        FigureFormat.Webp => "image/webp",
        _ => "image/svg+xml",
    };

    /// <summary>What a shop calls it.</summary>
    public static string Name(FigureFormat format) => format switch
    {
        FigureFormat.Jpeg => "JPEG",
        FigureFormat.Png => "PNG",
        FigureFormat.Webp => "WebP",
        _ => "SVG",
    };

    /// <summary>The form that the ending of a file's name promises; null where it is none of them.</summary>
    public static FigureFormat? ByName(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path[(path.LastIndexOf('.') + 1)..].ToUpperInvariant() switch
        {
            "JPG" or "JPEG" => FigureFormat.Jpeg,
            "PNG" => FigureFormat.Png,
            "WEBP" => FigureFormat.Webp,
            "SVG" => FigureFormat.Svg,
            _ => null,
        };
    }

    /// <summary>The form that a file begins like; null where it is none of them.</summary>
    internal static FigureFormat? ByContent(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xFF, 0xD8, 0xFF, ..] => FigureFormat.Jpeg,
        [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] => FigureFormat.Png,
        [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, (byte)'W', (byte)'E', (byte)'B', (byte)'P', ..] => FigureFormat.Webp,
        _ when IsMarkup(bytes) => FigureFormat.Svg,
        _ => null,
    };

    /// <summary>What else a file begins like, in words with an article; empty where nobody knows.</summary>
    internal static string Other(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [] => "an empty file",
        [(byte)'G', (byte)'I', (byte)'F', (byte)'8', ..] => "a GIF",
        [(byte)'B', (byte)'M', ..] => "a BMP",
        [(byte)'I', (byte)'I', 0x2A, 0, ..] or [(byte)'M', (byte)'M', 0, 0x2A, ..] => "a TIFF",
        [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', (byte)'h' or (byte)'m', ..] => "a HEIC photograph",
        [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', (byte)'a', ..] => "an AVIF",
        [(byte)'%', (byte)'P', (byte)'D', (byte)'F', ..] => "a PDF",
        [(byte)'P', (byte)'K', 3, 4, ..] => "a ZIP archive",
        [0x1F, 0x8B, ..] => "a gzip archive",
        [0x7F, (byte)'E', (byte)'L', (byte)'F', ..] or [(byte)'M', (byte)'Z', ..] => "a program",
        _ => "",
    };

    /// <summary>Whether it is a text in UTF-8 whose first sign is <c>&lt;</c>.</summary>
    private static bool IsMarkup(ReadOnlySpan<byte> bytes)
    {
        var text = bytes is [0xEF, 0xBB, 0xBF, ..] ? bytes[3..] : bytes;
        var start = text.IndexOfAnyExcept(" \t\r\n"u8);
        return start >= 0 && text[start] == '<';
    }
}
