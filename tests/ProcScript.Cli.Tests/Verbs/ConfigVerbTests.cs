using System.Text.Json.Nodes;
using Json.Schema;
using ProcScript.Analysis;
using ProcScript.Analysis.Settings;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class ConfigVerbTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public ConfigVerbTests() => _disk
        .With("procscript.json", "{\n  \"extends\": \"shop.json\",\n  \"overrides\": [\n    { \"paths\": \"press/**\", \"limits\": { \"cureWait\": \"1 h\" } }\n  ]\n}\n")
        .With("shop.json", "{ \"severities\": { \"PRC5xxx\": \"hint\" } }\n")
        .With("press/press.proc", "");

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task Each_value_is_printed_with_where_it_comes_from()
    {
        var run = await CliRun.AtAsync(_disk.Path, "config", "press/press.proc");

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.Matches(@"(?m)^limits\.cureWait +1 h +procscript\.json:4$", run.Output);
        Assert.Matches(@"(?m)^wording +english +built in$", run.Output);
        Assert.Matches(@"(?m)^PRC5092 long-sentence +hint +shop\.json:1$", run.Output);
        Assert.All(SettingsTable.All, setting => Assert.Contains("\n" + setting.Key, "\n" + run.Output, StringComparison.Ordinal));
        Assert.All(RuleCatalog.All, rule => Assert.Contains($"\n{rule.Info.Code} {rule.Info.Name} ", run.Output, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_command_line_outweighs_the_file_and_an_override_only_holds_for_its_paths()
    {
        var run = await CliRun.AtAsync(_disk.Path, "config", ".", "--wording", "neutral");

        Assert.Matches(@"(?m)^wording +neutral +the command line$", run.Output);
        Assert.Matches(@"(?m)^PRC5101 two-instructions +off +the command line$", run.Output);
        Assert.Matches(@"(?m)^limits\.cureWait +15 min +built in$", run.Output);
    }

    [Fact]
    public async Task Programs_get_the_same_as_json()
    {
        var json = JsonNode.Parse((await CliRun.AtAsync(_disk.Path, "config", "press", "--format", "json")).Output)!;

        Assert.Equal("1 h", json["settings"]!["limits.cureWait"]!["value"]!.GetValue<string>());
        Assert.Equal(4, json["settings"]!["limits.cureWait"]!["origin"]!["line"]!.GetValue<int>());
        Assert.Equal("shop.json", json["severities"]!["PRC5092"]!["origin"]!["file"]!.GetValue<string>());
        Assert.Equal(RuleCatalog.All.Length, json["severities"]!.AsObject().Count);
    }

    [Fact]
    public async Task Wrong_settings_fail_it()
    {
        _disk.With("shop.json", "{ \"wording\": 3 }");

        var run = await CliRun.AtAsync(_disk.Path, "config", ".");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains("error PRC7014 wrong-sort-of-setting: `wording` is a number\n --> shop.json:1:14\n", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("PRC7013", true)]
    [InlineData("PRC7014", true)]
    [InlineData("PRC7015", true)]
    [InlineData("PRC7017", true)]
    [InlineData("PRC7020", true)]
    [InlineData("PRC7013", false)]
    [InlineData("PRC7014", false)]
    [InlineData("PRC7015", false)]
    [InlineData("PRC7016", false)]
    [InlineData("PRC7018", false)]
    [InlineData("PRC7020", false)]
    public void The_schema_refuses_what_the_rules_find_and_takes_what_they_take(string code, bool fires)
    {
        var schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(Checkout.Root, "grammar", "settings.schema.json")));
        var file = Path.Combine(Checkout.Cases, "rules", code, fires ? "fires" : "quiet", "procscript.json");
        using var text = System.Text.Json.JsonDocument.Parse(File.ReadAllText(file), new() { AllowTrailingCommas = true, CommentHandling = System.Text.Json.JsonCommentHandling.Skip });

        Assert.Equal(!fires, schema.Evaluate(text.RootElement).IsValid);
    }
}
