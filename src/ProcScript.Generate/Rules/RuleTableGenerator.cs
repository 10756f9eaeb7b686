using System.Text;

namespace ProcScript.Generate.Rules;

/// <summary>The table of all rules in the language reference.</summary>
internal sealed class RuleTableGenerator : IGenerator
{
    private const string Document = "grammar/LANGUAGE.md";
    private const string Begin = "<!-- rules:begin -->";
    private const string End = "<!-- rules:end -->";

    public string Name => "rule-table";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root)
    {
        var path = Path.Combine(root, Document);
        var text = File.Exists(path) ? File.ReadAllText(path) : throw new GenerationException($"{Document} is missing.");
        var begin = text.IndexOf(Begin, StringComparison.Ordinal);
        var end = text.IndexOf(End, StringComparison.Ordinal);
        if (begin < 0 || end < begin)
        {
            throw new GenerationException($"{Document} needs the lines {Begin} and {End}, in this order.");
        }

        return [new GeneratedFile(Document, $"{text[..begin]}{Begin}\n\n{Table(RuleFiles.Find(root))}\n{text[end..]}")];
    }

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
