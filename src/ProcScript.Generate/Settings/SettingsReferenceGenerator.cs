using System.Text;
using ProcScript.Analysis.Settings;

namespace ProcScript.Generate.Settings;

/// <summary>The tables of settings in the page of rules and settings, from the table that they are read by.</summary>
internal sealed class SettingsReferenceGenerator : IGenerator
{
    private const string Document = "grammar/RULES.md";

    public string Name => "settings-reference";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root) => [DocumentSection.Fill(root, Document, "settings", Tables())];

    private static string Tables()
    {
        var text = new StringBuilder("| key of the file | what it is |\n|---|---|\n");
        foreach (var (key, what) in SettingsKeys.OfFile)
        {
            text.Append($"| `{key}` | {what} |\n");
        }

        text.Append("\n| setting | what it is | what may be written | built in | rules |\n|---|---|---|---|---|\n");
        foreach (var setting in SettingsTable.All)
        {
            var wide = setting.IsOfLibrary ? " For the whole library only." : "";
            text.Append($"| `{setting.Key}` | {setting.What}{wide} | {setting.Choices} | {setting.Print(setting.BuiltInValue)} | {string.Join(", ", setting.Rules)} |\n");
        }

        return text.ToString();
    }
}
