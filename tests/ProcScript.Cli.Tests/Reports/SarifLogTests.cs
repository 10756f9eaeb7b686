using System.Text.Json.Nodes;
using ProcScript.Analysis;
using ProcScript.Cli.Reports.Sarif;

namespace ProcScript.Cli.Tests.Reports;

/// <summary>What GitHub and other readers expect of a log; that it is valid at all is shown in <c>tests/outputs</c>.</summary>
public sealed class SarifLogTests : IDisposable
{
    private readonly ReportedLibrary _library = new();

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task Every_finding_is_a_result_with_its_rule_and_its_place()
    {
        var run = await RunAsync();
        var rules = run["tool"]!["driver"]!["rules"]!.AsArray();
        var results = run["results"]!.AsArray();

        Assert.True(results.Count >= 5, run.ToJsonString());
        Assert.Equal("utf16CodeUnits", (string?)run["columnKind"]);
        Assert.All(results, result =>
        {
            var rule = rules[(int)result!["ruleIndex"]!]!;
            Assert.Equal((string?)rule["id"], (string?)result["ruleId"]);
            Assert.Equal(RuleCatalog.Find((string)result["ruleId"]!)!.Info.Name, (string?)rule["name"]);
            Assert.NotEmpty((string)rule["help"]!["text"]!);
            Assert.Contains("**Wrong**\n\n```\n", (string)rule["help"]!["markdown"]!, StringComparison.Ordinal);
            Assert.Matches("^[0-9a-f]{32}:[0-9]+$", (string)result["partialFingerprints"]!["primaryLocationLineHash"]!);
            Assert.True((int)result["locations"]![0]!["physicalLocation"]!["region"]!["startLine"]! > 0);
        });
        Assert.Equal(rules.Count, rules.Select(rule => (string)rule!["id"]!).Distinct().Count());
    }

    [Fact]
    public async Task Files_are_named_from_the_repository_with_forward_slashes_and_plain_letters()
    {
        var run = await RunAsync();
        var files = Locations(run).Select(location => location["artifactLocation"]!).ToList();

        Assert.Contains("shop/50%25%2C%20a%3Ab/p%C3%BCmp%20%231.proc", files.Select(file => (string)file["uri"]!));
        Assert.All(files, file => Assert.Equal("SRCROOT", (string?)file["uriBaseId"]));
        Assert.All(files, file => Assert.Matches("^[A-Za-z0-9._~/%-]+$", (string)file["uri"]!));
        Assert.NotNull(run["originalUriBaseIds"]!["SRCROOT"]!["description"]!["text"]);
    }

    [Fact]
    public async Task Where_one_result_says_whether_it_is_suppressed_all_do()
    {
        var results = (await RunAsync())["results"]!.AsArray();
        var suppressed = results.Where(result => result!["suppressions"]!.AsArray().Count > 0).ToList();

        Assert.All(results, result => Assert.NotNull(result!["suppressions"]));
        var suppression = Assert.Single(suppressed)!["suppressions"]![0]!;
        Assert.Equal("inSource", (string?)suppression["kind"]);
        Assert.Equal("It is \\\"hand\\\" tight.", (string?)suppression["justification"]);
    }

    [Fact]
    public async Task Without_suppressions_none_does()
    {
        using TemporaryFolder disk = new();
        disk.With("a.proc", "}");
        var run = JsonNode.Parse((await CliRun.AtAsync(disk.Path, "check", "a.proc", "--format", "sarif")).Output)!["runs"]![0]!;

        Assert.Null(Assert.Single(run["results"]!.AsArray())!["suppressions"]);
        Assert.Null(Assert.Single(run["results"]!.AsArray())!["baselineState"]);
    }

    [Fact]
    public async Task Related_places_and_fixes_come_along()
    {
        var results = (await RunAsync())["results"]!.AsArray();

        var held = results.First(result => (string?)result!["ruleId"] == "PRC3001")!;
        Assert.Contains(held["relatedLocations"]!.AsArray(), place => (string?)place!["message"]!["text"] == "declared here");
        var fix = held["fixes"]![0]!["artifactChanges"]![0]!["replacements"]![0]!;
        Assert.Contains("undo cover_bolts", (string)fix["insertedContent"]!["text"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_not_checked_is_said()
    {
        var notifications = (await RunAsync())["invocations"]![0]!["toolExecutionNotifications"]!.AsArray().Select(one => (string)one!["message"]!["text"]!);

        Assert.Contains("Not checked: strip and refit of r, for its text or its machine has errors.", notifications);
        Assert.Contains("Not checked: refit of q, for its strip cannot be done as written.", notifications);
    }

    [Fact]
    public async Task No_more_results_than_GitHub_takes_and_the_rest_is_counted()
    {
        using TemporaryFolder disk = new();
        // The parser tells a hundred slips of a file.
        for (var i = 0; i <= SarifLog.MostResults / 100; i++)
        {
            disk.With($"{i}.proc", string.Concat(Enumerable.Repeat("}\n", 100)));
        }

        var run = JsonNode.Parse((await CliRun.AtAsync(disk.Path, "check", ".", "--format", "sarif")).Output)!["runs"]![0]!;

        Assert.Equal(SarifLog.MostResults, run["results"]!.AsArray().Count);
        Assert.Equal("100 more findings are not listed.", (string?)run["invocations"]![0]!["toolExecutionNotifications"]!.AsArray().Last()!["message"]!["text"]);
    }

    [Fact]
    public async Task The_time_is_told_on_request_alone()
    {
        Assert.Null((await RunAsync())["invocations"]![0]!["startTimeUtc"]);
        Assert.Equal("2026-06-01T12:00:00.000Z", (string?)(await RunAsync("--time"))["invocations"]![0]!["endTimeUtc"]);
    }

    private static IEnumerable<JsonNode> Locations(JsonNode node) => node switch
    {
        JsonObject thing => (thing["artifactLocation"] is null ? [] : new JsonNode[] { thing }).Concat(thing.Where(member => member.Value is not null).SelectMany(member => Locations(member.Value!))),
        JsonArray items => items.SelectMany(item => Locations(item!)),
        _ => [],
    };

    private async Task<JsonNode> RunAsync(params string[] options)
    {
        var run = await _library.CheckAsync(["--format", "sarif", .. options]);
        Assert.Equal("", run.Error);
        return JsonNode.Parse(run.Output)!["runs"]![0]!;
    }
}
