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
    [InlineData("// proc: allow PRC5003 until 2027-03-01 because \"two lifts\"", "PRC5003", "two lifts", "2027-03-01")]
    [InlineData("// proc: allow PRC5003 because \"two lifts\" until 2027-03-01", "PRC5003", "two lifts", "2027-03-01")]
    [InlineData("// proc: allow PRC5003 until 2027-03-01", "PRC5003", null, "2027-03-01")]
    [InlineData("// proc: allow until 2027-03-01", "", null, "2027-03-01")]
    [InlineData("// proc: allow PRC5003 because we wait until 2027-03-01", "PRC5003", "we wait until 2027-03-01", null)]
    [InlineData("// proc: allow PRC5003 because \"it holds \\\"until\\\" 2027\"", "PRC5003", "it holds \\\"until\\\" 2027", null)]
    public void A_suppression_may_have_a_last_day(string comment, string rule, string? reason, string? day)
    {
        var tree = Sample.Parse(comment + "\ntool a");
        var suppression = Assert.Single(tree.Suppressions);

        Assert.Equal(rule, suppression.Rule);
        Assert.Equal(reason, suppression.Reason);
        Assert.Equal(day, suppression.Expiry?.Day?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(day, suppression.Expiry is { } expiry ? tree.Text.Slice(expiry.Span) : null);
    }

    [Theory]
    [InlineData("// proc: allow PRC5003 until summer because \"x\"", "summer")]
    [InlineData("// proc: allow PRC5003 until the new pins come because \"x\"", "the new pins come")]
    [InlineData("// proc: allow PRC5003 until 1.3.2027 because \"x\"", "1.3.2027")]
    [InlineData("// proc: allow PRC5003 until 2027-02-29 because \"x\"", "2027-02-29")]
    [InlineData("// proc: allow PRC5003 until 2027-3-1 because \"x\"", "2027-3-1")]
    [InlineData("// proc: allow PRC5003 until because \"x\"", "until")]
    [InlineData("// proc: allow PRC5003 because \"x\" until", "until")]
    public void What_is_no_day_is_kept_as_such(string comment, string written)
    {
        var tree = Sample.Parse(comment + "\ntool a");
        var suppression = Assert.Single(tree.Suppressions);

        Assert.Equal("x", suppression.Reason);
        Assert.NotNull(suppression.Expiry);
        Assert.Null(suppression.Expiry.Day);
        Assert.Equal(written, tree.Text.Slice(suppression.Expiry.Span));
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
