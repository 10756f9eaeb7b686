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
    public static ImmutableArray<Fix> Fixes(IReadOnlyCollection<string> near, SourceSpan place)
    {
        var grade = near.Count == 1 ? FixGrade.Safe : FixGrade.NeedsLook;
        return [.. near.Select(name => new Fix($"Write `{name}`", grade, [new TextEdit(place, name)]))];
    }
}
