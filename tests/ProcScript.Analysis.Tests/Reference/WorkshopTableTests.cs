using System.Text.RegularExpressions;
using ProcScript.Analysis.Tests.Demo;

namespace ProcScript.Analysis.Tests.Reference;

/// <summary>The page of rules says of every workshop rule what it computes, from what source, and what line triggers it.</summary>
public sealed partial class WorkshopTableTests
{
    private static readonly string[][] Rows =
    [
        .. ReferenceExample.Rules.Split("<!-- workshop:begin -->")[1].Split("<!-- workshop:end -->")[0]
            .Split('\n')
            .Where(line => line.StartsWith("| PRC", StringComparison.Ordinal))
            .Select(line => line.Trim().Trim('|').Split(" | ").Select(cell => cell.Trim()).ToArray()),
    ];

    [Fact]
    public void Every_workshop_rule_has_a_row_in_the_order_of_codes() =>
        Assert.Equal(
            RuleCatalog.All.Select(rule => rule.Info.Code).Where(code => code.StartsWith("PRC5", StringComparison.Ordinal)),
            Rows.Select(row => row[0]));

    [Fact]
    public void Every_row_says_what_is_computed_from_what_source_and_what_triggers_it() =>
        Assert.All(Rows, row => Assert.True(row.Length == 4 && row.All(cell => cell.Length > 0), string.Join(" | ", row)));

    /// <summary>A line of the demo library is named by its file and words of it; else the sample is the rule's own page.</summary>
    [Fact]
    public void The_line_that_triggers_a_rule_is_there() => Assert.All(Rows, row =>
    {
        var demo = DemoLine().Match(row[3]);
        if (demo.Success)
        {
            Assert.Contains(demo.Groups["words"].Value, DemoLibrary.Files[demo.Groups["path"].Value], StringComparison.Ordinal);
        }
        else
        {
            Assert.Equal($"`procscript explain {row[0]}`", row[3]);
        }
    });

    [GeneratedRegex("^`(?<path>[^`]+\\.proc)`: `(?<words>[^`]+)`")]
    private static partial Regex DemoLine();
}
