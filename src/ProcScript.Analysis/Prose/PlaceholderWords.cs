using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Prose;

/// <summary>What people write where something is still to be written, in whatever language the rest is.</summary>
internal static partial class PlaceholderWords
{
    /// <summary>The first such word of a text.</summary>
    public static Match First(string text) => Pattern().Match(text);

    [GeneratedRegex(@"\b(TODO|TBD|TBC|FIXME|XXX+|[Ll]orem ipsum)\b|^\s*(todo|tbd|xxx+)\s*[.:]?\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
