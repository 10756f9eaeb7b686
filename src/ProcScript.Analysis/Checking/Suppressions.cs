using ProcScript.Analysis.Reports;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Rules.Suppressions;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Checking;

/// <summary>Tells what <c>// proc: allow</c> comments silence, and judges the comments.</summary>
internal static class Suppressions
{
    /// <summary>The findings of a file with those about the comments there, and which of them are silenced.</summary>
    /// <param name="tree">The file; null where it is no source that was read.</param>
    /// <param name="settings">What was chosen about the check.</param>
    /// <param name="extent">How much of what they may speak about was judged.</param>
    /// <param name="findings">The findings of the file.</param>
    public static SuppressedFindings Apply(SyntaxTree? tree, CheckSettings settings, JudgedExtent extent, IReadOnlyCollection<Finding> findings)
    {
        var silencings = new Dictionary<Finding, Silencing>(ReferenceEqualityComparer.Instance);
        if (tree is null || tree.Suppressions.IsEmpty)
        {
            return new SuppressedFindings(findings, silencings, []);
        }

        var comments = tree.Suppressions.Select(comment => new Allowance(tree.Text, comment, RuleCatalog.Find(comment.Rule)?.Info)).ToList();
        var allowed = comments.Where(comment => comment.Rule is not null).ToLookup(comment => comment.Silences);
        var used = new HashSet<Allowance>(ReferenceEqualityComparer.Instance);
        foreach (var finding in findings)
        {
            foreach (var comment in allowed[(tree.Text.LineAt(finding.Primary.Span.Start), finding.Rule.Code)])
            {
                used.Add(comment);
                if (!comment.IsOver(settings.Today))
                {
                    silencings.TryAdd(finding, comment.Silencing);
                }
            }
        }

        var judged = comments.ConvertAll(comment => (Comment: comment, State: StateOf(comment, used.Contains(comment), settings, extent)));
        return new SuppressedFindings(
            [.. findings, .. judged.SelectMany(one => Judge(one.Comment, one.State))],
            silencings,
            [.. judged.Select(one => new ReportedSuppression(one.Comment.Text.Path, one.Comment.Comment, one.Comment.Rule, one.State))]);
    }

    /// <summary>
    /// A rule that is off, or was not asked, has no findings, and neither has what was not judged: a comment on it waits for the day when it has.
    /// </summary>
    private static SuppressionState StateOf(Allowance allowance, bool hasFinding, CheckSettings settings, JudgedExtent extent) => allowance switch
    {
        { Rule: null } => SuppressionState.UnknownRule,
        _ when hasFinding => allowance.IsOver(settings.Today) ? SuppressionState.Expired : SuppressionState.Used,
        _ when settings.For(allowance.Text.Path).SeverityOf(allowance.Rule) is null => SuppressionState.RuleOff,
        _ => StateOf(RuleCatalog.Find(allowance.Rule.Code) is LibraryRule, extent),
    };

    private static SuppressionState StateOf(bool isOfLibrary, JudgedExtent extent) =>
        isOfLibrary && !extent.AsksOfLibrary ? SuppressionState.NotAsked
        : isOfLibrary ? (extent.IsLibrary ? SuppressionState.Unused : SuppressionState.NotJudged)
        : extent.IsFile ? SuppressionState.Unused : SuppressionState.NotJudged;

    private static IEnumerable<Finding> Judge(Allowance allowance, SuppressionState state)
    {
        var (text, comment, rule) = allowance;
        var place = new SourceSpan(text.Path, comment.Span);
        if (rule is null)
        {
            yield return UnknownRule.At(new SourceSpan(text.Path, comment.RuleSpan), comment.Rule);
            yield break;
        }

        if (state == SuppressionState.Unused)
        {
            yield return NothingToAllow.At(place, rule.Code, new SourceSpan(text.Path, LineOf(comment, text)));
            yield break;
        }

        if (comment.Expiry is { Day: null } expiry)
        {
            yield return AllowedUntilNoDate.At(new SourceSpan(text.Path, expiry.Span), text.Slice(expiry.Span));
        }

        if (state == SuppressionState.Expired)
        {
            yield return AllowanceExpired.At(new SourceSpan(text.Path, comment.Expiry!.Span), rule.Code, comment.Expiry.Day!.Value);
        }
        else if (comment.Reason is null)
        {
            yield return AllowWithoutReason.At(place, rule.Code);
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
        public (int Line, string Code) Silences => (Comment.TargetLine, Rule!.Code);

        public Silencing Silencing => new(SilencingKind.Comment, new SourceSpan(Text.Path, Comment.Span), Comment.Reason ?? "");

        /// <summary>The day that is named is the last one; who has no calendar lets it hold.</summary>
        public bool IsOver(DateOnly? today) => today > Comment.Expiry?.Day;
    }
}
