using ProcScript.Syntax.Findings;

namespace ProcScript.Model.Rules.Wording;

/// <summary>Lists in words.</summary>
public static class WordList
{
    /// <summary><c>a, b or c</c></summary>
    public static string Or(IEnumerable<string> words) => Join([.. words], "or");

    /// <summary><c>a, b and c</c></summary>
    public static string And(IEnumerable<string> words) => Join([.. words], "and");

    /// <summary><c>a, b or c</c>, the first few of many.</summary>
    public static string OrSome(IReadOnlyCollection<string> words)
    {
        const int Few = 8;
        return words.Count > Few ? string.Join(", ", words.Take(Few)) + " and so on" : Or(words);
    }

    /// <summary>Names in backticks: <c>`a`, `b` or `c`</c></summary>
    public static string OrNames(IEnumerable<string> names) => Or(names.Select(name => $"`{name}`"));

    /// <summary>Names in backticks, the first few of many.</summary>
    public static string AndSome(IReadOnlyCollection<string> names)
    {
        const int Few = 3;
        return FoldedList.Of([.. names.Select(name => $"`{name}`")], Few);
    }

    private static string Join(string[] words, string last) => words.Length switch
    {
        0 => "",
        1 => words[0],
        _ => $"{string.Join(", ", words[..^1])} {last} {words[^1]}",
    };
}
