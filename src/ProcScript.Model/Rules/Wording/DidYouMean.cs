using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Wording;

/// <summary>Words and edits for names that somebody probably meant.</summary>
public static class DidYouMean
{
    /// <summary>The question; empty where nothing is near.</summary>
    public static string Help(IReadOnlyCollection<string> near) =>
        near.Count == 0 ? "" : $"did you mean {WordList.OrNames(near)}?";

    /// <summary>An edit for each near name. One alone is safe; among several a person has to choose.</summary>
    /// <param name="near">The names.</param>
    /// <param name="place">Where the wrong one stands.</param>
    /// <param name="written">The wrong one, where figures in it may be a size: with other figures it is another piece, and a person has to look.</param>
    public static ImmutableArray<Fix> Fixes(IReadOnlyCollection<string> near, SourceSpan place, string? written = null)
    {
        var isSure = near.Count == 1 && (written is null || Figures(written) == Figures(near.First()));
        var grade = isSure ? FixGrade.Safe : FixGrade.NeedsLook;
        return [.. near.Select(name => new Fix($"Write `{name}`", grade, [new TextEdit(place, name)]))];
    }

    /// <summary>Whether each near name has other figures in it: it is another size then, more likely than a slip.</summary>
    public static bool AreOtherSizes(IReadOnlyCollection<string> near, string written) => near.All(name => Figures(written) != Figures(name));

    private static string Figures(string name) => string.Concat(name.Where(char.IsAsciiDigit));
}
