using System.Text.Json.Nodes;

namespace ProcScript.Cli.Tests.Reports;

/// <summary>
/// What GitLab's documentation of the code quality report asks for: an array of description, check_name, a fingerprint that no two
/// share, a severity of five, and a location with a path relative to the repository, without ./, and lines.begin.
/// </summary>
public sealed class GitLabReportTests : IDisposable
{
    private static readonly string[] Severities = ["info", "minor", "major", "critical", "blocker"];

    private readonly ReportedLibrary _library = new();

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task Every_issue_has_what_is_asked_for()
    {
        var issues = await IssuesAsync();

        Assert.True(issues.Count >= 4, issues.ToJsonString());
        Assert.All(issues, issue =>
        {
            Assert.NotEmpty((string)issue!["description"]!);
            Assert.Matches("^[a-z-]+$", (string)issue["check_name"]!);
            Assert.Contains((string)issue["severity"]!, Severities);
            Assert.StartsWith("shop/", (string)issue["location"]!["path"]!, StringComparison.Ordinal);
            Assert.True((int)issue["location"]!["lines"]!["begin"]! >= 1);
            Assert.True((int)issue["location"]!["lines"]!["end"]! >= (int)issue["location"]!["lines"]!["begin"]!);
        });
        Assert.Equal(issues.Count, issues.Select(issue => (string)issue!["fingerprint"]!).Distinct().Count());
        Assert.Contains(issues, issue => (string?)issue!["location"]!["path"] == "shop/" + ReportedLibrary.AwkwardFile);
    }

    [Fact]
    public async Task What_is_allowed_is_left_out()
    {
        Assert.DoesNotContain(await IssuesAsync(), issue => (string?)issue!["location"]!["path"] == "shop/allowed.proc");
    }

    [Fact]
    public async Task A_clean_library_is_an_empty_array()
    {
        Assert.Equal("[]\n", (await CliRun.AtAsync(_library.Disk.Path, "check", "shop/good.proc", "--format", "gitlab")).Output);
    }

    private async Task<JsonArray> IssuesAsync() => JsonNode.Parse((await _library.CheckAsync("--format", "gitlab")).Output)!.AsArray();
}
