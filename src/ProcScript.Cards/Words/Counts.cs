using System.Globalization;

namespace ProcScript.Cards.Words;

/// <summary>How many pieces a step is about, which stands in a column of its own.</summary>
internal static class Counts
{
    /// <summary>What a step says without its count: <c>Undo M8 × 25 bolt</c> of <c>Undo 8 × M8 × 25 bolt</c>; the same where it says none.</summary>
    public static string Without(string text, int count)
    {
        var said = string.Create(CultureInfo.InvariantCulture, $"{count} × ");
        for (var at = text.IndexOf(said, StringComparison.Ordinal); at >= 0; at = text.IndexOf(said, at + 1, StringComparison.Ordinal))
        {
            // Within a size, as in M8 × 25, a number stands behind a letter or another sign.
            if (at == 0 || text[at - 1] == ' ')
            {
                return text.Remove(at, said.Length);
            }
        }

        return text;
    }
}
