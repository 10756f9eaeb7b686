using System.Text.RegularExpressions;
using ProcScript.Analysis;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Completing;

/// <summary>The words of a comment that silences a rule; of the rules first those that speak of the line below.</summary>
internal static partial class SuppressionChoices
{
    private const int Rule = 12;

    /// <summary>What may come in a comment.</summary>
    /// <param name="asked">The document.</param>
    /// <param name="offset">Where one types.</param>
    /// <param name="comment">The comment up to there.</param>
    public static IEnumerable<CompletionItem> At(Asked asked, int offset, string comment)
    {
        var list = new ChoiceList();
        var words = Word().Matches(comment).Select(match => match.Value).ToList();
        list.Add(words switch
        {
            ["//"] => [ChoiceList.Word("proc: allow", "silences one rule on the next line")],
            ["//", "proc:"] => [ChoiceList.Word("allow", "silences one rule on the next line")],
            ["//", "proc:", "allow"] => Rules(asked, offset),
            ["//", "proc:", "allow", _] => [ChoiceList.Word("because", "why"), ChoiceList.Word("until", "the last day on which it holds")],
            ["//", "proc:", "allow", _, "until", _] => [ChoiceList.Word("because", "why")],
            _ => [],
        });
        return list.Items;
    }

    private static IEnumerable<CompletionItem> Rules(Asked asked, int offset)
    {
        // What was last found of the line; a check of the text as it is now is not waited for, and lines may have moved since.
        var below = LineBelow(asked, offset);
        var report = asked.Analysis.IsJudged ? asked.Analysis.Report : asked.Analysis.Files.Memory.Report;
        var speaking = (report?.Findings ?? [])
            .Where(one => one.Finding.Primary.Path == asked.Path && report!.TextOf(asked.Path) is { } text && text.Slice(text.LineSpan(text.LineAt(one.Finding.Primary.Span.Start))).Trim() == below)
            .Select(one => one.Finding.Rule.Code)
            .ToHashSet(StringComparer.Ordinal);
        return RuleCatalog.All.OrderByDescending(rule => speaking.Contains(rule.Info.Code))
            .Select(rule => new CompletionItem(rule.Info.Code, Rule) { Detail = $"{rule.Info.Name}: {rule.Info.Title}{(speaking.Contains(rule.Info.Code) ? " (speaks here)" : "")}" });
    }

    private static string LineBelow(Asked asked, int offset)
    {
        var text = asked.Tree.Text;
        for (var line = text.LineAt(offset) + 1; line < text.LineCount; line++)
        {
            if (text.Slice(text.LineSpan(line)).Trim() is { Length: > 0 } words && !words.StartsWith("//", StringComparison.Ordinal))
            {
                return words;
            }
        }

        return "";
    }

    // The word that is being typed is none yet.
    [GeneratedRegex("""(//|"[^"]*"|[^\s"/]+)(?=\s|proc:)|//""")]
    private static partial Regex Word();
}
