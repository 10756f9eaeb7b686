using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

public sealed class ViewTests : IClassFixture<ServedSample>
{
    private const int RequestFailed = -32803;

    private readonly ServedSample _sample;

    public ViewTests(ServedSample sample)
    {
        _sample = sample;
        sample.Job.Set(Sample.Job);
    }

    [Theory]
    [InlineData("procscript.view.pack", "motor_new.html", "<!doctype html>")]
    [InlineData("procscript.view.refit", "motor_new.refit.md", "# Refit: Replace the motor")]
    [InlineData("procscript.view.map", "motor_new.map.svg", "<svg xmlns=")]
    [InlineData("procscript.view.plan", "motor_new.plan.json", "{")]
    [InlineData("procscript.view.places", "motor_new.places.json", "{")]
    public async Task A_view_is_a_file_that_any_client_can_open(string command, string name, string begin)
    {
        var view = await _sample.Client.RequestAsync("workspace/executeCommand", Command(command, new JsonObject { ["uri"] = _sample.Job.Uri }));
        var path = new Uri(view!["uri"]!.GetValue<string>()).LocalPath;

        Assert.Equal(name, Path.GetFileName(path));
        Assert.Equal("Replace the motor", view["title"]!.GetValue<string>());
        Assert.StartsWith(begin, await File.ReadAllTextAsync(path, TestContext.Current.CancellationToken), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task The_way_back_goes_from_the_step_at_the_cursor()
    {
        var document = EditorDocument.Open(_sample.Client, EditorClient.UriOf(_sample.Library["lid.proc"]), """
            clip pin "pin"
            machine lid_box "lid box" {
              part lid "lid" { held by 2 pin as lid_pins }
              part lamp "lamp" { behind lid  held by 1 pin as lamp_pin }
            }
            procedure lamp_out "Take the lamp out" on lid_box {
              goal remove lamp
              stage "Lid" { release lid_pins  remove lid }
              stage "Lamp" { release lamp_pin  remove lamp }
            }

            """);

        var back = await _sample.Client.RequestAsync("workspace/executeCommand", Command("procscript.view.back", At("remove lid")));
        var page = await File.ReadAllTextAsync(new Uri(back!["uri"]!.GetValue<string>()).LocalPath, TestContext.Current.CancellationToken);
        Assert.Equal("lamp_out.back-2.md", Path.GetFileName(new Uri(back["uri"]!.GetValue<string>()).LocalPath));
        Assert.StartsWith("# Back from step 2 (Remove the lid) of 'Take the lamp out', lid box", page, StringComparison.Ordinal);
        Assert.Contains("proven like the whole", page, StringComparison.Ordinal);
        Assert.True(page.IndexOf("Fit the lid", StringComparison.Ordinal) is > 0 and var fit && fit < page.IndexOf("Engage 2", StringComparison.Ordinal), page);
        Assert.DoesNotContain("lamp\n", page, StringComparison.Ordinal);

        var refused = await _sample.Client.AnswerAsync("workspace/executeCommand", Command("procscript.view.back", At("goal remove")));
        Assert.Contains("Nothing has been done yet", refused["error"]!["message"]!.GetValue<string>(), StringComparison.Ordinal);

        var place = document.Position(document.Text.IndexOf("remove lid", StringComparison.Ordinal));
        var offers = (await _sample.Client.RequestAsync("textDocument/codeAction", new JsonObject
        {
            ["textDocument"] = document.Identifier,
            ["range"] = new JsonObject { ["start"] = place.DeepClone(), ["end"] = place.DeepClone() },
            ["context"] = new JsonObject { ["diagnostics"] = new JsonArray(), ["triggerKind"] = 1 },
        }))!.AsArray();
        var offer = Assert.Single(offers, one => one!["kind"]!.GetValue<string>() == "procscript.show")!;
        Assert.Equal("Show the way back from step 2", offer["title"]!.GetValue<string>());
        Assert.Null(offer["edit"]);
        var shown = await _sample.Client.RequestAsync("workspace/executeCommand", Command(
            offer["command"]!["command"]!.GetValue<string>(), offer["command"]!["arguments"]![0]!.DeepClone().AsObject()));
        Assert.EndsWith("lamp_out.back-2.md", shown!["uri"]!.GetValue<string>(), StringComparison.Ordinal);
        document.Close();

        JsonObject At(string text) => new() { ["uri"] = document.Uri, ["position"] = document.Position(document.Text.IndexOf(text, StringComparison.Ordinal)) };
    }

    [Fact]
    public async Task A_view_tells_what_others_there_could_be_of_the_procedure()
    {
        var document = EditorDocument.Open(_sample.Client, EditorClient.UriOf(_sample.Library["bench.proc"]), """
            clip pin "pin"
            machine bench "bench" {
              option rail "rail"
              when rail { part rail "rail" { held by 1 pin as rail_pin } }
              each side in left, right { part leg[side] "{side} leg" { held by 1 pin as leg_pin[side]  when rail { behind rail } } }
            }
            procedure leg_out(side in left, right) "Take the {side} leg off" on bench {
              goal remove leg[side]
              when rail { stage "Rail" { release rail_pin  remove rail } }
              stage "Leg" { release leg_pin[side]  remove leg[side] }
            }

            """);
        var arguments = new JsonObject { ["uri"] = document.Uri, ["job"] = "leg_out-right", ["options"] = new JsonArray("rail") };

        var view = await _sample.Client.RequestAsync("workspace/executeCommand", Command("procscript.view.plan", arguments));

        Assert.Equal("leg_out-right", view!["job"]!.GetValue<string>());
        Assert.Equal("""["rail"]""", view["options"]!.ToJsonString());
        Assert.Equal(
            ["leg_out-left [\"rail\"]", "leg_out-left []", "leg_out-right [\"rail\"]", "leg_out-right []"],
            view["choices"]!.AsArray().Select(choice => $"{choice!["job"]} {choice["options"]!.ToJsonString()}").Order(StringComparer.Ordinal));
        Assert.All(view["choices"]!.AsArray(), choice => Assert.True(choice!["isProven"]!.GetValue<bool>()));
        document.Close();
    }

    [Fact]
    public async Task A_view_goes_to_the_folder_that_the_client_names()
    {
        var folder = _sample.Library["views"];
        var arguments = new JsonObject { ["uri"] = _sample.Job.Uri, ["position"] = _sample.Job.Position(_sample.Job.Text.Length - 5), ["folder"] = EditorClient.UriOf(folder) };

        await _sample.Client.RequestAsync("workspace/executeCommand", Command("procscript.view.refit", arguments));

        var page = await File.ReadAllTextAsync(Path.Combine(folder, "motor_new.refit.md"), TestContext.Current.CancellationToken);
        Assert.Contains("22 ± 2 N·m", page, StringComparison.Ordinal);
        Assert.True(page.IndexOf("Fit the new motor", StringComparison.Ordinal) < page.IndexOf("Fit the fan wheel", StringComparison.Ordinal), page);
    }

    [Theory]
    [InlineData("procscript.view.pack", "not proven")]
    [InlineData("procscript.view.none", "There is no command")]
    public async Task What_cannot_be_shown_is_refused_with_a_reason(string command, string reason)
    {
        _sample.Job.Replace("    undo hub_bolt\n", "");

        var answer = await _sample.Client.AnswerAsync("workspace/executeCommand", Command(command, new JsonObject { ["uri"] = _sample.Job.Uri }));

        Assert.Equal(RequestFailed, answer["error"]!["code"]!.GetValue<int>());
        Assert.Contains(reason, answer["error"]!["message"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lenses_lead_to_the_views_of_a_proven_job_and_say_when_it_is_not()
    {
        async Task<string[]> TitlesAsync() =>
            [.. (await LensesAsync()).Select(lens => lens!["command"]!["title"]!.GetValue<string>())];

        var lenses = await LensesAsync();
        Assert.Equal(["Cards", "Refit", "Map"], (await TitlesAsync())[..3]);
        Assert.StartsWith("proven, about ", (await TitlesAsync())[3], StringComparison.Ordinal);
        Assert.NotNull(await _sample.Client.RequestAsync("workspace/executeCommand", Command(
            lenses[0]!["command"]!["command"]!.GetValue<string>(),
            lenses[0]!["command"]!["arguments"]![0]!.DeepClone().AsObject())));
        _sample.Job.Replace("    undo hub_bolt\n", "");
        Assert.Equal(["not proven"], await TitlesAsync());
    }

    private async Task<JsonArray> LensesAsync() =>
        (await _sample.Client.RequestAsync("textDocument/codeLens", new JsonObject { ["textDocument"] = _sample.Job.Identifier }))!.AsArray();

    private static JsonObject Command(string command, JsonObject arguments) => new() { ["command"] = command, ["arguments"] = new JsonArray(arguments) };
}
