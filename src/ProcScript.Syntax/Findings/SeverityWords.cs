using System.Collections.Immutable;

namespace ProcScript.Syntax.Findings;

/// <summary>How severities are called, in what is printed, in settings and on the command line.</summary>
public static class SeverityWords
{
    private static readonly ImmutableArray<(string Word, Severity Severity)> Meanings =
        [("error", Severity.Error), ("warning", Severity.Warning), ("hint", Severity.Hint)];

    /// <summary>The words, the worst first.</summary>
    public static ImmutableArray<string> All { get; } = [.. Meanings.Select(meaning => meaning.Word)];

    /// <summary>Such as <c>error</c>.</summary>
    public static string Of(Severity severity) => Meanings.First(meaning => meaning.Severity == severity).Word;

    /// <summary>The severity that a word stands for; null where it stands for none.</summary>
    public static Severity? Read(string word)
    {
        foreach (var (known, severity) in Meanings)
        {
            if (known == word)
            {
                return severity;
            }
        }

        return null;
    }
}
