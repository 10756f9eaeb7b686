using System.Text.RegularExpressions;

namespace ProcScript.Model.Figures;

/// <summary>Looks whether the looks of a drawing (CSS 2.1, and the attributes that say the same) stay within it.</summary>
internal static partial class SvgValues
{
    /// <summary>Whether a value names nothing but looks, and by <c>url</c> only what may be used.</summary>
    public static bool IsSafe(string value, Predicate<string> mayBeUsed) =>
        !value.Contains('\\', StringComparison.Ordinal)
        && !value.Contains('@', StringComparison.Ordinal)
        && Calls().Matches(value).All(call => Allowed(call.Groups["name"].Value, call.Groups["inside"].Value, mayBeUsed));

    /// <summary>The declarations of a <c>style</c> attribute that may stay; null where one of them reaches out.</summary>
    public static string? SafeStyle(string style, Predicate<string> isSafe, ICollection<string> removed)
    {
        List<string> kept = [];
        foreach (var declaration in style.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var colon = declaration.IndexOf(':', StringComparison.Ordinal);
            var property = colon < 0 ? "" : declaration[..colon].Trim();
            if (!isSafe(declaration))
            {
                removed.Add("`style` with a reference out of the drawing");
            }
            else if (SvgAllowed.Attributes.Contains(property))
            {
                kept.Add(declaration);
            }
        }

        return string.Join(';', kept);
    }

    /// <summary>Whether a sheet in the drawing gives looks alone.</summary>
    public static bool IsSafeSheet(string sheet, SvgReferences references) =>
        !sheet.Contains('<', StringComparison.Ordinal) && IsSafe(sheet, id => references.MayBeUsed(id, isReferredTo: true));

    /// <summary>What a value names by <c>url</c> within the drawing.</summary>
    public static IEnumerable<string> Targets(string value) =>
        value.Contains('(', StringComparison.Ordinal) ? Calls().Matches(value).Select(call => Target(call.Groups["inside"].Value)).OfType<string>() : [];

    private static bool Allowed(string name, string inside, Predicate<string> mayBeUsed) => name.ToUpperInvariant() switch
    {
        "URL" => Target(inside) is { } id && mayBeUsed(id),
        "RGB" or "RGBA" or "HSL" or "HSLA" or "MATRIX" or "TRANSLATE" or "SCALE" or "ROTATE" or "SKEWX" or "SKEWY" => true,
        _ => false,
    };

    private static string? Target(string inside) => inside.Trim().Trim('"', '\'').Trim() is ['#', .. var id] ? id : null;

    [GeneratedRegex(@"(?<name>[A-Za-z_-]*)\s*\((?<inside>[^)]*)")]
    private static partial Regex Calls();
}
