using ProcScript.Model.Rules;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Model.Tests.Rules;

/// <summary>The page of every rule of this room keeps its word: the wrong sample fires just this rule, the right one none.</summary>
public sealed class RulePageTests
{
    /// <summary>What no text can show.</summary>
    private const string UnreadableFile = "PRC1107";

    public static TheoryData<string> Codes => [.. ModelRules.All.Select(rule => rule.Info.Code)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_wrong_sample_fires_just_this_rule(string code)
    {
        var found = Bind(Rule(code).Page.Wrong).Select(finding => $"{finding.Rule.Code}").Distinct();
        Assert.Equal(code == UnreadableFile ? [] : [code], found);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_right_sample_fires_none(string code) =>
        Assert.Empty(Bind(Rule(code).Page.Right).Select(finding => $"{finding.Rule.Code} {finding.Message}"));

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_message_is_one_sentence_without_a_full_stop(string code)
    {
        foreach (var finding in Bind(Rule(code).Page.Wrong))
        {
            Assert.False(finding.Message.EndsWith('.'), finding.Message);
            Assert.False(finding.Help.EndsWith('.'), finding.Help);
            Assert.DoesNotContain("  ", finding.Message, StringComparison.Ordinal);
        }
    }

    private static Rule Rule(string code) => ModelRules.All.Single(rule => rule.Info.Code == code);

    private static IEnumerable<Finding> Bind(string sample) =>
        LibraryBinder.Bind(new MemorySourceStore(Files(sample)), TestContext.Current.CancellationToken).Findings;

    /// <summary>The files of a sample, each behind a line with its name; a sample of one file has no such line.</summary>
    private static IEnumerable<KeyValuePair<string, string>> Files(string sample)
    {
        const string Mark = "// file: ";
        return sample.StartsWith(Mark, StringComparison.Ordinal)
            ? sample.Split(Mark, StringSplitOptions.RemoveEmptyEntries).Select(file => file.Split('\n', 2)).Select(file => KeyValuePair.Create(file[0].Trim(), file[1]))
            : [KeyValuePair.Create("sample.proc", sample)];
    }
}
