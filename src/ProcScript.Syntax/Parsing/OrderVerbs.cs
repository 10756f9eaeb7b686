using System.Collections.Immutable;

namespace ProcScript.Syntax.Parsing;

/// <summary>The verb that a rule of the refit lacks before a name, as the steps of the same file tell it.</summary>
internal static class OrderVerbs
{
    private static readonly ImmutableArray<(string Off, string On)> Pairs =
    [
        ("undo", "fasten"), ("release", "engage"), ("unplug", "plug"), ("disconnect", "connect"), ("cut", "renew"), ("remove", "fit"), ("strip", "fit"),
        ("aside", "return"), ("isolate", "restore"), ("empty", "fill"),
    ];

    /// <summary>The verb that puts back what the steps of the text do to a name; null where they do nothing to it, or several things.</summary>
    public static string? For(string content, string name)
    {
        string[] found = [.. Pairs.Where(pair => Says(content, $"{pair.Off} {name}")).Select(pair => pair.On).Distinct(StringComparer.Ordinal)];
        return found is [var only] ? only : null;
    }

    private static bool Says(string content, string words)
    {
        for (var at = content.IndexOf(words, StringComparison.Ordinal); at >= 0; at = content.IndexOf(words, at + 1, StringComparison.Ordinal))
        {
            if ((at == 0 || !IsNamePart(content[at - 1])) && (at + words.Length == content.Length || !IsNamePart(content[at + words.Length])))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsNamePart(char character) => char.IsLetterOrDigit(character) || character == '_';
}
