using System.Globalization;
using System.Xml.Linq;

namespace ProcScript.Model.Figures;

/// <summary>How large a drawing is, in pixels of 1/96 in.</summary>
internal static class SvgSize
{
    /// <summary>By its own words, else by its window.</summary>
    /// <exception cref="FigureException">It does not say.</exception>
    public static (double Width, double Height) Of(XElement root)
    {
        var window = ((string?)root.Attribute("viewBox") ?? "")
            .Split([' ', ',', '\t', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries)
            .Select(Number)
            .ToArray();
        var (width, height) = (Length((string?)root.Attribute("width")), Length((string?)root.Attribute("height")));
        if (window is [_, _, > 0, > 0])
        {
            var ratio = window[2] / window[3];
            return (width, height) switch
            {
                ({ } w, { } h) => (w, h),
                ({ } w, null) => (w, w / ratio),
                (null, { } h) => (h * ratio, h),
                _ => (window[2], window[3]),
            };
        }

        return (width, height) is ({ } ownWidth, { } ownHeight)
            ? (ownWidth, ownHeight)
            : throw new FigureException(FigureTrouble.Damaged, "it says neither its width and height nor its `viewBox`");
    }

    private static double? Length(string? written)
    {
        if (written?.Trim() is not { Length: > 0 } text)
        {
            return null;
        }

        var digits = text.TrimEnd("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ%".ToCharArray());
        var perUnit = text[digits.Length..].ToUpperInvariant() switch
        {
            "" or "PX" => 1.0,
            "MM" => 96 / 25.4,
            "CM" => 96 / 2.54,
            "IN" => 96,
            "PT" => 96.0 / 72,
            "PC" => 16,
            _ => double.NaN,
        };
        var length = Number(digits) * perUnit;
        return length > 0 && double.IsFinite(length) ? length : null;
    }

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : double.NaN;
}
