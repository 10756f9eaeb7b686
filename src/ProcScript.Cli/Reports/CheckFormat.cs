using System.Collections.Immutable;
using System.Text.Json;
using ProcScript.Analysis.Reports.Documents;
using ProcScript.Cli.Output;
using ProcScript.Cli.Reports.Sarif;

namespace ProcScript.Cli.Reports;

/// <summary>A form in which a check tells other programs what it found.</summary>
/// <param name="Name">What <c>--format</c> calls it.</param>
/// <param name="Render">Writes it.</param>
internal sealed record CheckFormat(string Name, Func<CheckOutcome, string> Render)
{
    /// <summary>The name of the form for people, which a terminal writes.</summary>
    public const string Text = "text";

    /// <summary>The forms for programs.</summary>
    public static ImmutableArray<CheckFormat> All { get; } =
    [
        new("json", outcome => LogCommands.DisarmJson(Json(outcome))),
        new("sarif", outcome => LogCommands.DisarmJson(SarifLog.Render(outcome))),
        new("github", GitHubAnnotations.Render),
        new("gitlab", outcome => LogCommands.DisarmJson(GitLabReport.Render(outcome))),
        new("junit", outcome => LogCommands.DisarmXml(JUnitReport.Render(outcome))),
    ];

    private static string Json(CheckOutcome outcome)
    {
        var document = new DocumentBuilder(outcome.Report, ProductVersion.Program).Report(outcome.FileCount, outcome.MostFindings, outcome.Time?.Elapsed);
        return JsonSerializer.Serialize(document, ReportJson.Published.ReportDocument) + "\n";
    }
}
