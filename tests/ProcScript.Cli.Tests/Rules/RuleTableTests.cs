using ProcScript.Analysis;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Tests.Rules;

/// <summary>The table of rules in the reference is made from the rules' text; this holds it against the rules as they are compiled.</summary>
public sealed class RuleTableTests
{
    [Fact]
    public void The_reference_lists_every_rule_as_it_is()
    {
        var listed = File.ReadLines(Path.Combine(Checkout.Root, "grammar", "RULES.md"))
            .SkipWhile(line => line != "<!-- rules:begin -->")
            .Where(line => line.StartsWith("| PRC", StringComparison.Ordinal))
            .Select(line => string.Join('|', line.Split('|')[..5]));
        var rules = RuleCatalog.All.Select(rule => rule.Info)
            .Select(info => $"| {info.Code} | `{info.Name}` | {info.Title} | {SeverityWords.Of(info.DefaultSeverity)} ");

        Assert.Equal(rules, listed);
    }
}
