namespace ProcScript.Syntax.Findings;

/// <summary>
/// Long lists in the texts of findings. A program gets the whole list; a person at a terminal gets the first few, how many more there are,
/// and how to see them. The text of a finding holds both, parted by a mark that no text can hold.
/// </summary>
public static class FoldedList
{
    /// <summary>A noncharacter of Unicode, never part of a text.</summary>
    private const char Mark = '\uFDD0';

    /// <summary>A list: <c>a, b and c</c>; what goes beyond the first <paramref name="most"/> may be folded away.</summary>
    public static string Of(IReadOnlyList<string> items, int most)
    {
        ArgumentNullException.ThrowIfNull(items);
        return items.Count <= most + 1
            ? Join(items)
            : $"{string.Join(", ", items.Take(most))}{Mark}, {Join([.. items.Skip(most)])}{Mark} and {items.Count - most} more (check --all names them){Mark}";
    }

    /// <summary>The text with all of its lists.</summary>
    public static string Whole(string text) => Take(text, 1);

    /// <summary>The text with its long lists cut short.</summary>
    public static string Short(string text) => Take(text, 2);

    private static string Join(IReadOnlyList<string> items) =>
        items.Count < 2 ? string.Concat(items) : $"{string.Join(", ", items.SkipLast(1))} and {items[^1]}";

    private static string Take(string text, int which)
    {
        if (!text.Contains(Mark, StringComparison.Ordinal))
        {
            return text;
        }

        var parts = text.Split(Mark);
        return string.Concat(parts.Where((_, place) => place % 3 == 0 || place % 3 == which));
    }
}
