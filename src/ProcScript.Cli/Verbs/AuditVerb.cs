using System.Text.Json;
using ProcScript.Analysis;
using ProcScript.Analysis.Auditing;
using ProcScript.Analysis.Expecting;
using ProcScript.Analysis.Reports.Documents;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary><c>audit</c>: makes mistakes in a library, in memory, and lists those that nothing notices.</summary>
internal static class AuditVerb
{
    /// <summary>Checks, tries the mistakes, and lists.</summary>
    public static async Task<ExitCode> RunAsync(AuditRequest request, Surroundings around, CancellationToken stop)
    {
        var expectations = Expectations.Find(request.Input, around);
        var store = expectations.Store;
        if (request.Output is { } named)
        {
            OutputFile.RefuseInput(named, store, around);
        }

        var settings = request.Settings.Read(store, around.Today);
        var report = await expectations.CheckAsync(settings, stop);
        if (report.Findings.Count(reported => reported.Severity == Severity.Error) is var errors and > 0)
        {
            around.Error.WriteLine($"procscript: the library has {Counted.Of(errors, "error")}: what is wrong already hides what else would be noticed. See 'procscript check', and audit it then.");
            return ExitCode.Findings;
        }

        ExpectCheck check = new(report);
        if (expectations.Files.Sum(file => check.Judge(file).Length + file.Problems.Length) is var otherwise and > 0)
        {
            around.Error.WriteLine($"procscript: the library has {Counted.Of(otherwise, "expectation")} not met, which would notice nothing more. See 'procscript test', and audit it then.");
            return ExitCode.Findings;
        }

        using AuditProgress progress = new(around);
        var audit = await Task.Run(() => LibraryAudit.Run(store, settings, report, store.Selection.IsGiven, expectations.Files, progress.Tell, stop), stop).WaitAsync(stop);
        progress.Clear();
        Tell(audit, report, request, store, around);
        return audit.Unnoticed.Count() > request.AtMost ? ExitCode.Findings : ExitCode.Clean;
    }

    private static void Tell(AuditReport audit, LibraryReport report, AuditRequest request, DiskSourceStore store, Surroundings around)
    {
        if (request.Output is { } output && !OutputFile.IsOutput(output))
        {
            using StringWriter text = new();
            Write(around with { Output = text }, ColourChoice.Never);
            OutputFile.Write(output, text.ToString(), store, around).WriteLine($"wrote {output}: {AuditListing.Summary(audit)}");
        }
        else
        {
            Write(around, request.Colour);
        }

        void Write(Surroundings to, ColourChoice colour)
        {
            if (request.Json)
            {
                var document = new DocumentBuilder(report, ProductVersion.Program).Audit(audit);
                to.Output.Write(LogCommands.DisarmJson(JsonSerializer.Serialize(document, ReportJson.Published.AuditDocument)) + "\n");
            }
            else
            {
                AuditListing.Print(audit, Terminal.For(to, colour), new ScreenPaths(store.Selection, around.CurrentFolder));
            }
        }
    }
}

/// <summary>What <c>audit</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What the shop has chosen.</param>
/// <param name="Json">Whether to list for programs.</param>
/// <param name="AtMost">How many may go unnoticed; null for any number.</param>
/// <param name="Output">The file to list in, as typed; null for the output.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record AuditRequest(InputRequest Input, SettingsRequest Settings, bool Json, int? AtMost, string? Output, ColourChoice Colour);
