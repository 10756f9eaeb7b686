using System.Collections.Immutable;

namespace ProcScript.Syntax.Text;

/// <summary>Whole numbers in words, as people write small counts.</summary>
public static class NumberWords
{
    private static readonly ImmutableArray<string> Words =
        ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>The number that a word stands for, in any case of letters; null for any other word.</summary>
    public static int? Of(string word)
    {
        for (var number = 0; number < Words.Length; number++)
        {
            if (Words[number].Equals(word, StringComparison.OrdinalIgnoreCase))
            {
                return number;
            }
        }

        return null;
    }
}
