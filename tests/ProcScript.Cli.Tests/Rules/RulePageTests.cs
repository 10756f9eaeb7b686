using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Tests.Rules;

/// <summary>The page of every rule: what it calls wrong is found, what it calls right is not.</summary>
public sealed class RulePageTests
{
    /// <summary>What these find is not in a text, so that no sample can show it; <see cref="Malformed.MalformedInputTests"/> the tests of baselines and <see cref="Versions.DiffVerbTests"/> do.</summary>
    private static readonly string[] NotInAText = ["PRC1007", "PRC1107", "PRC1147", "PRC5095", "PRC5096", "PRC7031"];

    public static TheoryData<string> Codes => [.. RuleCatalog.All.Select(rule => rule.Info.Code)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_wrong_sample_gives_exactly_this_finding(string code)
    {
        if (!NotInAText.Contains(code))
        {
            Assert.Equal([code], Check(Rule(code).Page.Wrong).Select(finding => finding.Rule.Code).Distinct());
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_right_sample_gives_none(string code)
    {
        Assert.Empty(Check(Rule(code).Page.Right).Select(finding => $"{finding.Rule.Code}: {finding.Message}"));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_page_is_written(string code)
    {
        var (info, page) = (Rule(code).Info, Rule(code).Page);

        Assert.Matches("^PRC[1-8][0-9]{3}$", info.Code);
        Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", info.Name);
        Assert.All(new[] { info.Title, page.What, page.Why, page.Wrong, page.Right }, text => Assert.False(string.IsNullOrWhiteSpace(text)));
        Assert.False(info.Title.EndsWith('.'), "A title has no full stop.");
        Assert.NotEqual(page.Wrong, page.Right);
    }

    [Fact]
    public void No_two_rules_share_a_code_or_a_name()
    {
        Assert.NotEmpty(RuleCatalog.All);
        Assert.Equal(RuleCatalog.All.Length, RuleCatalog.All.Select(rule => rule.Info.Code).Distinct().Count());
        Assert.Equal(RuleCatalog.All.Length, RuleCatalog.All.Select(rule => rule.Info.Name).Distinct().Count());
    }

    private static Rule Rule(string code) => RuleCatalog.Find(code)!;

    private static IEnumerable<Finding> Check(string sample)
    {
        var store = SampleFiles.Of(sample);
        return LibraryCheck.Run(store, SettingsReader.Read(store) with { Today = StoppedClock.Day }).Findings.Select(reported => reported.Finding);
    }
}
