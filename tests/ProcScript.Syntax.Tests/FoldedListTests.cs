using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Tests;

public sealed class FoldedListTests
{
    private static readonly RuleInfo Rule = new("PRC0000", "test", "Test", Severity.Hint);

    [Theory]
    [InlineData(0, "", "")]
    [InlineData(1, "1", "1")]
    [InlineData(3, "1, 2 and 3", "1, 2 and 3")]
    [InlineData(4, "1, 2, 3 and 4", "1, 2 and 2 more (check --all names them)")]
    [InlineData(6, "1, 2, 3, 4, 5 and 6", "1, 2 and 4 more (check --all names them)")]
    public void A_long_list_is_whole_for_programs_and_short_for_people(int count, string whole, string cut)
    {
        var text = FoldedList.Of([.. Enumerable.Range(1, count).Select(number => $"{number}")], most: 2);

        Assert.Equal((whole, cut), (FoldedList.Whole(text), FoldedList.Short(text)));
    }

    [Fact]
    public void A_finding_has_it_whole_wherever_it_is_asked_and_short_once_it_is_shortened()
    {
        string[] names = ["a", "b", "c", "d"];
        var list = FoldedList.Of(names, 1);
        var place = new SourceSpan("x.proc", default);
        var finding = new Finding(Rule, $"of {list} and {list}.", place, list)
        {
            Help = $"see {list}",
            Related = [new LabeledSpan(place, list)],
            Fixes = [new Fix($"Insert {list}", FixGrade.NeedsLook, [])],
        };

        Assert.Equal(
            ["of a, b, c and d and a, b, c and d.", "a, b, c and d", "see a, b, c and d", "a, b, c and d", "Insert a, b, c and d"],
            Texts(finding));
        Assert.Equal("of a and 3 more (check --all names them) and a and 3 more (check --all names them).", finding.Shortened().Message);
        Assert.All(Texts(finding.Shortened()), text => Assert.EndsWith("3 more (check --all names them)", text.TrimEnd('.'), StringComparison.Ordinal));
    }

    private static string[] Texts(Finding finding) => [finding.Message, finding.Label, finding.Help, finding.Related[0].Label, finding.Fixes[0].Title];
}
