using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

/// <summary>What a shop chooses holds in the editor as soon as it is chosen, on the disk or in a buffer.</summary>
public sealed class SettingsTests : IDisposable
{
    private const string Rule = "PRC5094";
    private static readonly string[] Severities = ["", "error", "warning", "information", "hint"];

    private static readonly string Machine = Sample.Machine.Replace(
        "    mass 4 kg\n",
        "    notice \"Wipe it.\"\n    danger \"It kills. Stay away.\"\n    mass 4 kg\n",
        StringComparison.Ordinal);

    private readonly TemporaryLibrary _library = Sample.Library().With("fan/machine.proc", Machine);

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task A_settings_file_that_changes_on_the_disk_changes_what_findings_weigh()
    {
        await using var client = await EditorClient.StartAsync(_library.Path);
        var machine = Open(client, "fan/machine.proc", Machine);
        Assert.Equal("information", await WeightAsync(machine));

        Save(client, Choosing("error"), created: true);
        Assert.Equal("error", await WeightAsync(machine));
        Save(client, Choosing("off"));
        Assert.Equal("", await WeightAsync(machine));
        Save(client, $$"""{ "overrides": [{ "paths": "fan/**", "severities": { "{{Rule}}": "warning" } }] }""");
        Assert.Equal("warning", await WeightAsync(machine));

        File.Delete(_library["procscript.json"]);
        Tell(client, type: 3);
        Assert.Equal("information", await WeightAsync(machine));
    }

    [Fact]
    public async Task A_settings_file_in_a_buffer_holds_before_it_is_saved_and_is_judged_itself()
    {
        _library.With("procscript.json", Choosing("warning"));
        await using var client = await EditorClient.StartAsync(_library.Path);
        var machine = Open(client, "fan/machine.proc", Machine);
        Assert.Equal("warning", await WeightAsync(machine));

        var settings = Open(client, "procscript.json", Choosing("warning"));
        settings.Replace("warning", "error");
        Assert.Equal("error", await WeightAsync(machine));

        settings.Replace("error", "errer");
        Assert.Equal("information", await WeightAsync(machine));
        var finding = Assert.Single(await settings.DiagnosticsAsync())!;
        Assert.Equal("PRC7015", finding["code"]!.GetValue<string>());
        Assert.Equal("\"errer\"", settings.Slice(finding["range"]!));

        settings.Close();
        Assert.Equal("warning", await WeightAsync(machine));
    }

    private static string Choosing(string severity) => $$"""{ "severities": { "{{Rule}}": "{{severity}}" } }""";

    private EditorDocument Open(EditorClient client, string path, string text) => EditorDocument.Open(client, EditorClient.UriOf(_library[path]), text);

    private void Save(EditorClient client, string settings, bool created = false)
    {
        _library.With("procscript.json", settings);
        Tell(client, type: created ? 1 : 2);
    }

    private void Tell(EditorClient client, int type) => client.Notify("workspace/didChangeWatchedFiles", new JsonObject
    {
        ["changes"] = new JsonArray(new JsonObject { ["uri"] = EditorClient.UriOf(_library["procscript.json"]), ["type"] = type }),
    });

    private static async Task<string> WeightAsync(EditorDocument document)
    {
        var findings = await document.DiagnosticsAsync();
        return string.Join(' ', findings
            .Where(finding => finding!["code"]!.GetValue<string>() == Rule)
            .Select(finding => Severities[finding!["severity"]!.GetValue<int>()]));
    }
}
