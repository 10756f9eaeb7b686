using ProcScript.Model.Names;

namespace ProcScript.Model.Rules.Wording;

/// <summary>Guesses by its name what sort of thing is meant.</summary>
internal static class KindGuess
{
    /// <summary>Of several sorts those that a name looks like; all where it looks like none.</summary>
    public static IEnumerable<string> Likely(string name, IEnumerable<string> sorts)
    {
        string[] all = [.. sorts];
        string[] likely = [.. all.Where(sort => LooksLike(name, sort))];
        return likely.Length > 0 ? likely : all;
    }

    private static bool LooksLike(string name, string sort) =>
        (sort == "fastener" && name is ['m' or 'M', >= '0' and <= '9', ..])
        || name.Split('_').Any(part => ShopWords.Sounds(part, sort));
}
