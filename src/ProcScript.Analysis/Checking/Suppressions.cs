using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Rules.Suppressions;
using ProcScript.Model;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Checking;

/// <summary>Takes out what <c>// proc: allow</c> comments silence, and judges the comments.</summary>
internal static class Suppressions
{
    /// <summary>The findings that are left, with those about the comments.</summary>
    public static IEnumerable<Finding> Apply(Library library, CheckSettings settings, IReadOnlyCollection<Finding> findings)
    {
        var comments = library.Trees.Values
            .SelectMany(tree => tree.Suppressions.Select(comment => new Allowance(tree.Text, comment, RuleCatalog.Find(comment.Rule)?.Info)))
            .ToList();
        if (comments.Count == 0)
        {
            return findings;
        }

        var allowed = comments.Where(comment => comment.Rule is not null).ToLookup(comment => comment.Silences);
        var used = new HashSet<Allowance>();
        var left = new List<Finding>();
        foreach (var finding in findings)
        {
            var silencing = allowed[(finding.Primary.Path, LineOf(finding, library), finding.Rule.Code)].ToList();
            used.UnionWith(silencing);
            if (silencing.Count == 0)
            {
                left.Add(finding);
            }
        }

        return left.Concat(comments.SelectMany(comment => Judge(comment, used.Contains(comment) || !IsOn(comment.Rule, settings))));
    }

    private static int LineOf(Finding finding, Library library) =>
        library.Trees.TryGetValue(finding.Primary.Path, out var tree) ? tree.Text.LineAt(finding.Primary.Span.Start) : -1;

    /// <summary>A rule that is off has no findings, and a comment on it waits for the day it is on again.</summary>
    private static bool IsOn(RuleInfo? rule, CheckSettings settings) =>
        settings.EnglishWording || rule is null || RuleCatalog.Find(rule.Code) is not ProseRule { IsEnglish: true };

    private static IEnumerable<Finding> Judge(Allowance allowance, bool isUsed)
    {
        var (text, comment, rule) = allowance;
        if (rule is null)
        {
            yield return UnknownRule.At(new SourceSpan(text.Path, comment.RuleSpan), comment.Rule);
            yield break;
        }

        if (!isUsed)
        {
            yield return NothingToAllow.At(new SourceSpan(text.Path, comment.Span), rule.Code, new SourceSpan(text.Path, LineOf(comment, text)));
        }
        else if (comment.Reason is null)
        {
            yield return AllowWithoutReason.At(new SourceSpan(text.Path, comment.Span), rule.Code);
        }
    }

    /// <summary>The comment with its line where it stands alone on one.</summary>
    private static TextSpan LineOf(SuppressionComment comment, SourceText text)
    {
        var line = text.LineAt(comment.Span.Start);
        var span = text.LineSpan(line);
        return line + 1 < text.LineCount && string.IsNullOrWhiteSpace(text.Content[span.Start..comment.Span.Start])
            ? TextSpan.FromBounds(span.Start, text.LineSpan(line + 1).Start)
            : comment.Span;
    }

    private sealed record Allowance(SourceText Text, SuppressionComment Comment, RuleInfo? Rule)
    {
        public (string Path, int Line, string Code) Silences => (Text.Path, Comment.TargetLine, Rule!.Code);
    }
}
