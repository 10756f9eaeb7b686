using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Reports;

/// <summary>The code quality report that GitLab shows in merge requests.</summary>
internal static class GitLabReport
{
    /// <summary>An issue a finding.</summary>
    public static string Render(CheckOutcome outcome)
    {
        var issues = outcome.Listed.Select(reported =>
        {
            var finding = reported.Finding;
            var (start, end) = outcome.Report.LinesOf(finding.Primary);
            return new GitLabIssue(
                $"{finding.Rule.Code}: {finding.Message}",
                finding.Rule.Name,
                reported.Fingerprint.ToString(),
                Weight(reported.Severity),
                new GitLabLocation(outcome.Paths.Of(finding.Primary.Path), new GitLabLines(start.Line + 1, end.Line + 1)));
        });
        return JsonSerializer.Serialize([.. issues], GitLabJson.Published.GitLabIssueArray) + "\n";
    }

    private static string Weight(Severity severity) => severity switch
    {
        Severity.Error => "critical",
        Severity.Warning => "minor",
        _ => "info",
    };
}

/// <summary>An issue.</summary>
internal sealed record GitLabIssue(string Description, string CheckName, string Fingerprint, string Severity, GitLabLocation Location);

/// <summary>Where it is.</summary>
internal sealed record GitLabLocation(string Path, GitLabLines Lines);

/// <summary>The first and the last line.</summary>
internal sealed record GitLabLines(int Begin, int End);

/// <summary>The form in which GitLab reads it.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(GitLabIssue[]))]
internal sealed partial class GitLabJson : JsonSerializerContext
{
    public static GitLabJson Published { get; } = new(new JsonSerializerOptions
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
    });
}
