using System.Text;

namespace ProcScript.Generate.Rules;

/// <summary>The table of all rules in the page of rules and settings.</summary>
internal sealed class RuleTableGenerator : IGenerator
{
    private const string Document = "grammar/RULES.md";

    public string Name => "rule-table";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root) =>
        [DocumentSection.Fill(root, Document, "rules", Table(RuleFiles.Find(root)))];

    private static string Table(IEnumerable<RuleFile> rules)
    {
        var table = new StringBuilder("| code | name | what it finds | severity | room |\n|---|---|---|---|---|\n");
        foreach (var rule in rules)
        {
            var title = rule.Title.Replace("|", "\\|", StringComparison.Ordinal);
            table.Append($"| {rule.Code} | `{rule.Name}` | {title} | {rule.Severity} | {rule.Room["ProcScript.".Length..]} |\n");
        }

        return table.ToString();
    }
}
