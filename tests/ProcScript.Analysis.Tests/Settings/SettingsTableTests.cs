using ProcScript.Analysis.Settings;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Settings;

/// <summary>The table of settings is true to the rules, and to its own words.</summary>
public sealed class SettingsTableTests
{
    public static TheoryData<string> Keys => [.. SettingsTable.All.Select(setting => setting.Key)];

    [Theory]
    [MemberData(nameof(Keys))]
    public void Its_rules_exist(string key) => Assert.All(SettingsTable.Find(key)!.Rules, code => Assert.Equal(code, RuleCatalog.Find(code)?.Info.Code));

    [Theory]
    [MemberData(nameof(Keys))]
    public void What_is_built_in_can_be_written(string key)
    {
        var setting = SettingsTable.Find(key)!;
        using var bytes = new MemoryStream();
        using (var writer = new System.Text.Json.Utf8JsonWriter(bytes))
        {
            setting.Write(writer, setting.BuiltInValue);
        }

        var names = key.Split('.');
        var value = System.Text.Encoding.UTF8.GetString(bytes.ToArray());
        var text = string.Concat(names.Select(name => $"{{ \"{name}\": ")) + value + new string('}', names.Length);
        var settings = SettingsReader.Read(MemorySourceStore.Of("procscript.json", text));

        Assert.Empty(settings.Findings);
        Assert.Equal(setting.Print(setting.BuiltInValue), setting.Print(settings.Everywhere.Look(setting).Value));
        Assert.NotNull(settings.Everywhere.Look(setting).Origin.Place);
    }
}
