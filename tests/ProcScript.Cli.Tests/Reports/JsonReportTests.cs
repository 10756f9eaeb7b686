using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace ProcScript.Cli.Tests.Reports;

/// <summary>The published schemas and the JSON that is written agree, judged by a schema library.</summary>
public sealed class JsonReportTests : IDisposable
{
    private static readonly JsonSchema Report = Schema("report");
    private static readonly JsonSchema Suppressions = Schema("suppressions");
    private static readonly JsonSchema Baseline = Schema("baseline");

    private readonly ReportedLibrary _library = new();

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task A_report_is_valid_and_says_the_same_as_the_text()
    {
        var report = Parse((await _library.CheckAsync("--format", "json", "--time")).Output);
        var text = await _library.CheckAsync();

        Assert.True(IsValid(Report, report));
        var summary = report["summary"]!;
        Assert.Contains($"\n{summary["errors"]} errors, {summary["warnings"]} warnings in 7 files; {summary["allowed"]} allowed by comments; ", text.Output, StringComparison.Ordinal);
        Assert.Equal((int)summary["errors"]! + (int)summary["warnings"]! + (int)summary["hints"]!, report["findings"]!.AsArray().Count);
        Assert.Equal((int)summary["allowed"]!, report["silenced"]!.AsArray().Count);
        Assert.Equal(0, (double)summary["seconds"]!);
        Assert.Equal(["not-checked", "not-proven", "proven", "proven", "proven"], report["procedures"]!.AsArray().Select(one => (string)one!["verdict"]!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task The_findings_that_are_left_out_are_counted()
    {
        var report = Parse((await _library.CheckAsync("--format", "json", "--max-findings", "2")).Output);

        Assert.Equal(2, report["findings"]!.AsArray().Count);
        Assert.Equal((int)report["summary"]!["errors"]! + (int)report["summary"]!["warnings"]! + (int)report["summary"]!["hints"]! - 2, (int)report["summary"]!["notListed"]!);
    }

    [Fact]
    public async Task Suppressions_and_a_baseline_are_valid_too()
    {
        var suppressions = Parse((await CliRun.AtAsync(_library.Disk.Path, "suppressions", "shop", "--format", "json")).Output);
        await CliRun.AtAsync(_library.Disk.Path, "baseline", "write", "shop", "-o", "baseline.json");

        Assert.True(IsValid(Suppressions, suppressions));
        Assert.True(IsValid(Baseline, Parse(_library.Disk.Read("baseline.json"))));
    }

    [Fact]
    public async Task A_missing_and_an_unknown_member_are_refused()
    {
        var report = Parse((await _library.CheckAsync("--format", "json")).Output);
        report["findings"]![0]!.AsObject().Remove("rule");
        var other = Parse((await _library.CheckAsync("--format", "json")).Output);
        other["findings"]![0]!["added"] = 1;

        Assert.False(IsValid(Report, report));
        Assert.False(IsValid(Report, other));
    }

    private static JsonSchema Schema(string name) => JsonSchema.FromFile(Path.Combine(Checkout.Root, "src", "ProcScript.Analysis", $"{name}.schema.json"));

    private static JsonNode Parse(string text) => JsonNode.Parse(text)!;

    private static bool IsValid(JsonSchema schema, JsonNode document) => schema.Evaluate(JsonSerializer.SerializeToElement(document)).IsValid;
}
