using ProcScript.Syntax.Findings;

namespace ProcScript.Syntax.Tests;

/// <summary>
/// The slip made most: a word, a sign or a quote that was left out, tried at every place of the good files; in a plain run, at some of these.
/// </summary>
[Slow]
public sealed class DeletionTests
{
    [Fact]
    public void A_word_left_out_gives_one_finding_at_most_nearly_everywhere()
    {
        AssertNearlyAll(0.99, Deletions().Where((_, i) => IsTaken(i)).Select(text => Sample.Parse(text).Findings.Length <= 1));
    }

    [Fact]
    public void A_quote_left_out_gives_one_finding_nearly_everywhere()
    {
        AssertNearlyAll(0.99, QuoteDeletions().Select(text => Sample.Parse(text).Findings.Length == 1));
    }

    [Fact]
    public void Any_character_left_out_gives_one_finding_at_most_nearly_everywhere()
    {
        var deletions =
            from content in Sample.All
            from i in Enumerable.Range(0, content.Length)
            where i % 7 == 0 && IsTaken(i / 7)
            select content.Remove(i, 1);

        AssertNearlyAll(0.99, deletions.Select(text => Sample.Parse(text).Findings.Length <= 1));
    }

    [Fact]
    public void The_fix_of_a_missing_word_makes_the_file_a_good_one_again()
    {
        var mended =
            from text in Deletions().Where((_, i) => i % 3 == 0)
            let findings = Sample.Parse(text).Findings
            where findings.Length == 1 && findings[0].Fixes.Length > 0
            where findings[0].Fixes[0].Title.StartsWith("Insert", StringComparison.Ordinal)
            select Sample.Parse(Sample.Fixed(text, findings[0])).Findings.IsEmpty;

        AssertNearlyAll(0.98, mended);
    }

    [Fact]
    public void The_fix_of_an_unclosed_text_closes_it()
    {
        var left =
            from text in QuoteDeletions()
            let finding = Sample.Parse(text).Findings[0]
            where finding.Rule.Code == "PRC1003" && finding.Fixes.Length > 0
            select Sample.Parse(Sample.Fixed(text, finding)).Findings.Count(IsUnclosedText);

        Assert.All(left, count => Assert.Equal(0, count));
    }

    private static bool IsTaken(int place) => Depth.IsTaken(place, oneIn: 3);

    private static bool IsUnclosedText(Finding finding) => finding.Rule.Code == "PRC1003";

    private static IEnumerable<string> Deletions() =>
        from content in Sample.All
        from token in Sample.Words(Sample.Parse(content))
        select content.Remove(token.Span.Start, token.Span.Length);

    private static IEnumerable<string> QuoteDeletions() =>
        from content in Sample.All
        from i in Enumerable.Range(0, content.Length)
        where content[i] == '"'
        select content.Remove(i, 1);

    private static void AssertNearlyAll(double share, IEnumerable<bool> results)
    {
        var all = results.ToList();
        Assert.True(all.Count > 100, $"{all.Count} cases only");
        var good = all.Count(result => result);
        Assert.True(good >= share * all.Count, $"only {good} of {all.Count} are as they should be");
    }
}
