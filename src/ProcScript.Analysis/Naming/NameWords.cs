using System.Collections.Immutable;
using ProcScript.Analysis.Settings;

namespace ProcScript.Analysis.Naming;

/// <summary>Takes names apart into words and writes them in a style.</summary>
internal static class NameWords
{
    /// <summary>The name in a style; the same where it is written so already.</summary>
    public static string In(NameStyle style, string name)
    {
        // Humps of one letter run together: "aB" is "AB" as they stand, and that is one word.
        var written = Once(style, name);
        return written == name ? name : In(style, written);
    }

    private static string Once(NameStyle style, string name)
    {
        var words = Of(name);
        if (style == NameStyle.Any || words.IsEmpty)
        {
            return name;
        }

        // A name may begin with a line so that a digit can follow.
        var lead = name[0] == '_' && char.IsDigit(words[0][0]) ? "_" : "";
        return lead + style switch
        {
            NameStyle.Snake => string.Join('_', words.Select(word => word.ToLowerInvariant())),
            NameStyle.Upper => string.Join('_', words.Select(word => word.ToUpperInvariant())),
            NameStyle.Camel => Humps(words, words[0].ToLowerInvariant()),
            _ => Humps(words, Hump(words[0])),
        };
    }

    // Two numbers that met would be another number: "m8_25" keeps its line.
    private static string Humps(ImmutableArray<string> words, string first) => first + string.Concat(words.Skip(1).Select((word, index) =>
        (char.IsDigit(word[0]) && char.IsDigit(words[index][^1]) ? "_" : "") + Hump(word)));

    private static string Hump(string word) => char.ToUpperInvariant(word[0]) + word[1..].ToLowerInvariant();

    /// <summary>The words: between lines, and from one hump to the next.</summary>
    private static ImmutableArray<string> Of(string name)
    {
        var words = ImmutableArray.CreateBuilder<string>();
        foreach (var stretch in name.Split('_', StringSplitOptions.RemoveEmptyEntries))
        {
            var start = 0;
            for (var at = 1; at < stretch.Length; at++)
            {
                var isHump = char.IsUpper(stretch[at])
                    && (char.IsLower(stretch[at - 1]) || (char.IsUpper(stretch[at - 1]) && at + 1 < stretch.Length && char.IsLower(stretch[at + 1])));
                if (isHump)
                {
                    words.Add(stretch[start..at]);
                    start = at;
                }
            }

            words.Add(stretch[start..]);
        }

        return words.ToImmutable();
    }
}
