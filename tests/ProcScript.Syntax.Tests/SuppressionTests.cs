namespace ProcScript.Syntax.Tests;

public sealed class SuppressionTests
{
    [Theory]
    [InlineData("// proc: allow PRC5003 because \"two lifts\"", "PRC5003", "two lifts")]
    [InlineData("//proc:allow heavy-lift because two lifts", "heavy-lift", "two lifts")]
    [InlineData("// proc: allow PRC5003", "PRC5003", null)]
    [InlineData("// proc: allow PRC5003 because", "PRC5003", null)]
    [InlineData("// proc: allow PRC5003 because \"\"", "PRC5003", null)]
    [InlineData("// proc: allow because \"x\"", "", "x")]
    [InlineData("// proc: allow", "", null)]
    public void A_suppression_has_its_rule_and_reason(string comment, string rule, string? reason)
    {
        var tree = Sample.Parse(comment + "\ntool a");
        var suppression = Assert.Single(tree.Suppressions);

        Assert.Equal(rule, suppression.Rule);
        Assert.Equal(rule, tree.Text.Slice(suppression.RuleSpan));
        Assert.Equal(reason, suppression.Reason);
        Assert.Equal(comment, tree.Text.Slice(suppression.Span));
        Assert.Equal(1, suppression.TargetLine);
    }

    [Theory]
    [InlineData("// note")]
    [InlineData("// process: allow PRC5003")]
    [InlineData("// proc: allowed PRC5003")]
    [InlineData("tool a \"// proc: allow PRC5003\"")]
    public void Any_other_comment_is_none(string content)
    {
        Assert.Empty(Sample.Parse(content).Suppressions);
    }

    [Fact]
    public void A_suppression_speaks_of_the_next_line_with_more_than_comments()
    {
        var tree = Sample.Parse("""
            // proc: allow A because "x"
            // proc: allow B because "y"

              // note
            tool a // proc: allow C because "z"

            tool b
            // proc: allow D
            """);

        Assert.Equal(
            [("A", 4), ("B", 4), ("C", 6), ("D", 8)],
            tree.Suppressions.Select(suppression => (suppression.Rule, suppression.TargetLine)));
    }
}
