using System.Collections.Immutable;
using ProcScript.Model.Catalog;

namespace ProcScript.Analysis.Tools;

/// <summary>The words of a tool's title, in any case of letters, whatever stands between them.</summary>
internal static class TitleWords
{
    /// <summary>Whether the title has one of these, each with a blank before and behind it.</summary>
    public static bool Has(Tool tool, ImmutableArray<string> words)
    {
        var title = $" {string.Concat(tool.Title.Select(letter => char.IsLetter(letter) ? char.ToLowerInvariant(letter) : ' '))} ";
        return words.Any(word => title.Contains(word, StringComparison.Ordinal));
    }
}
