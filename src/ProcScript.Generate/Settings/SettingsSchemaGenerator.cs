using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Generate.Settings;

/// <summary>The JSON schema of a settings file, from the table of settings and the rules.</summary>
internal sealed class SettingsSchemaGenerator : IGenerator
{
    private static readonly JsonSerializerOptions Written = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NewLine = "\n",
        WriteIndented = true,
    };

    public string Name => "settings-schema";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root)
    {
        JsonObject schema = new()
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "The settings of a library, procscript.json",
            ["type"] = "object",
            ["properties"] = OfFile(),
            ["additionalProperties"] = false,
            ["$defs"] = new JsonObject { ["severities"] = Severities() },
        };
        return [new GeneratedFile("grammar/settings.schema.json", schema.ToJsonString(Written) + "\n")];
    }

    private static JsonObject OfFile()
    {
        var properties = Settings(SettingsTable.All);
        foreach (var (key, what) in SettingsKeys.OfFile)
        {
            var value = key switch
            {
                SettingsKeys.Schema => new JsonObject { ["type"] = "string" },
                SettingsKeys.Extends => OneOrMore(),
                SettingsKeys.Severities => new JsonObject { ["$ref"] = "#/$defs/severities" },
                SettingsKeys.Overrides => new JsonObject { ["type"] = "array", ["items"] = Override() },
                _ => throw new GenerationException($"The schema of settings has no word for `{key}`."),
            };
            value["description"] = what;
            properties[key] = value;
        }

        return properties;
    }

    private static JsonObject Override()
    {
        var properties = Settings(SettingsTable.All.Where(setting => !setting.IsOfLibrary));
        properties[SettingsKeys.Paths] = OneOrMore();
        properties[SettingsKeys.Severities] = new JsonObject { ["$ref"] = "#/$defs/severities" };
        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = properties,
            ["required"] = new JsonArray(SettingsKeys.Paths),
            ["additionalProperties"] = false,
        };
    }

    private static JsonObject OneOrMore() => new()
    {
        ["anyOf"] = new JsonArray(
            new JsonObject { ["type"] = "string", ["minLength"] = 1 },
            new JsonObject { ["type"] = "array", ["items"] = new JsonObject { ["type"] = "string", ["minLength"] = 1 } }),
    };

    private static JsonObject Settings(IEnumerable<Setting> settings)
    {
        JsonObject properties = [];
        foreach (var setting in settings)
        {
            var at = properties;
            var names = setting.Key.Split('.');
            foreach (var group in names[..^1])
            {
                at[group] ??= new JsonObject { ["type"] = "object", ["properties"] = new JsonObject(), ["additionalProperties"] = false };
                at = at[group]!["properties"]!.AsObject();
            }

            at[names[^1]] = Value(setting);
        }

        return properties;
    }

    private static JsonObject Value(Setting setting)
    {
        var value = setting switch
        {
            IChoiceSetting choice => new JsonObject { ["enum"] = new JsonArray([.. choice.Options.Select(word => (JsonNode)word)]) },
            QuantitySetting quantity => new JsonObject { ["type"] = "string", ["pattern"] = Pattern(quantity.Dimension) },
            CountSetting count => new JsonObject { ["type"] = "integer", ["minimum"] = count.Least, ["maximum"] = count.Most },
            FolderSetting => new JsonObject { ["type"] = "string" },
            TextsSetting => new JsonObject { ["type"] = "array", ["items"] = new JsonObject { ["type"] = "string" } },
            _ => throw new GenerationException($"The schema of settings has no word for {setting.GetType().Name}."),
        };
        value["description"] = $"{setting.What} {char.ToUpperInvariant(setting.Choices[0])}{setting.Choices[1..]}; built in: {setting.Print(setting.BuiltInValue)}.";
        return value;
    }

    private static string Pattern(Dimension dimension)
    {
        var units = Units.Of(dimension).Select(unit => Regex.Escape(Units.SpellingOf(unit)).Replace("\\.", "[.·]", StringComparison.Ordinal));
        return $"^\\s*[0-9][0-9./ ]*\\s*({string.Join('|', units)})\\s*$";
    }

    private static JsonObject Severities()
    {
        JsonObject properties = [];
        foreach (var rule in RuleCatalog.All.Select(rule => rule.Info))
        {
            properties[rule.Code] = Severity(rule);
            properties[rule.Name] = Severity(rule);
        }

        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = properties,
            ["patternProperties"] = new JsonObject { ["^(PRC)?[1-8]xxx$"] = Words(SeverityChoice.Words) },
            ["additionalProperties"] = false,
        };
    }

    private static JsonObject Severity(RuleInfo rule)
    {
        var words = SeverityChoice.Words.Where(word => SeverityChoice.TryRead(word, out var severity) && SeverityChoice.MayBe(rule, severity));
        var value = Words(words);
        value["description"] = rule.Title;
        return value;
    }

    private static JsonObject Words(IEnumerable<string> words) => new() { ["enum"] = new JsonArray([.. words.Select(word => (JsonNode)word)]) };
}
