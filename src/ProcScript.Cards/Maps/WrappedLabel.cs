namespace ProcScript.Cards.Maps;

/// <summary>Breaks a title into the lines of a box. Widths are counted in letters: a file that brings no font knows no better.</summary>
internal static class WrappedLabel
{
    private const int Letters = 19;
    private const int MostLines = 3;

    /// <summary>At most three lines; what is left out shows as an ellipsis.</summary>
    public static IReadOnlyList<string> Lines(string title)
    {
        List<string> lines = [""];
        foreach (var word in title.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).SelectMany(Pieces))
        {
            if (lines[^1].Length == 0)
            {
                lines[^1] = word;
            }
            else if (lines[^1].Length + 1 + word.Length <= Letters)
            {
                lines[^1] += " " + word;
            }
            else if (lines.Count < MostLines)
            {
                lines.Add(word);
            }
            else
            {
                lines[^1] = Shortened(lines[^1]);
                break;
            }
        }

        return lines;
    }

    private static IEnumerable<string> Pieces(string word)
    {
        var start = 0;
        while (word.Length - start > Letters)
        {
            // Both halves of a surrogate pair stay together.
            var length = char.IsHighSurrogate(word[start + Letters - 1]) ? Letters - 1 : Letters;
            yield return word.Substring(start, length);
            start += length;
        }

        yield return word[start..];
    }

    private static string Shortened(string line)
    {
        if (line.Length < Letters)
        {
            return line + "…";
        }

        var end = char.IsLowSurrogate(line[Letters - 1]) ? Letters - 2 : Letters - 1;
        return line[..end] + "…";
    }
}
