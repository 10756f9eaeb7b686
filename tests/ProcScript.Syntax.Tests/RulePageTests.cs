using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Rules;

namespace ProcScript.Syntax.Tests;

public sealed class RulePageTests
{
    // A file beyond the limit is no page; LimitTests makes one.
    private const string WithoutSample = "PRC1007";

    public static TheoryData<string> Codes => [.. SyntaxRules.All.Select(rule => rule.Info.Code)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_right_sample_of_a_rule_has_no_finding(string code)
    {
        Assert.Empty(Sample.Parse(RuleOf(code).Page.Right).Findings);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_wrong_sample_of_a_rule_has_its_finding_and_no_other(string code)
    {
        var findings = Sample.Parse(RuleOf(code).Page.Wrong).Findings;

        Assert.Equal(code == WithoutSample ? [] : [code], findings.Select(finding => finding.Rule.Code));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_rule_says_truly_whether_its_findings_have_fixes(string code)
    {
        var info = RuleOf(code).Info;
        var hasFix = Sample.Parse(RuleOf(code).Page.Wrong).Findings.Any(finding => finding.Fixes.Length > 0);

        Assert.Equal(info.Fix != FixAvailability.Never, hasFix);
    }

    [Fact]
    public void The_rules_of_the_text_have_the_codes_from_1001_on()
    {
        Assert.Equal(Enumerable.Range(1001, 13).Select(number => $"PRC{number}"), SyntaxRules.All.Select(rule => rule.Info.Code));
    }

    private static Rule RuleOf(string code) => SyntaxRules.All.Single(rule => rule.Info.Code == code);
}
