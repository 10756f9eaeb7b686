using ProcScript.Analysis.Mending;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary><c>fix</c>: applies the fixes of the findings, or shows what they would change.</summary>
internal static class FixVerb
{
    /// <summary>Mends, writes or shows, and tells.</summary>
    public static async Task<ExitCode> RunAsync(FixRequest request, Surroundings around, CancellationToken stop)
    {
        var selection = SourceSelection.Find(request.Input, around.CurrentFolder);
        var printsText = selection.IsForOutput(!request.Diff);
        DiskSourceStore store = new(selection, around.OpenInput);
        var mend = request.Mend with { MayChange = selection.IsGiven };
        var settings = request.Settings.Read(store, around.Today);
        var report = await Task.Run(() => LibraryMend.Run(store, settings, mend, stop), stop).WaitAsync(stop);
        store.RefuseUnreadable();

        ScreenPaths paths = new(selection, around.CurrentFolder);
        FixTelling telling = new(report, request, paths);
        if (printsText)
        {
            var path = selection.StandardInput!;
            around.Output.Write(report.Files is [var only] ? only.After : report.After.Library.Trees[path].Text.Content);
            telling.TellTrouble(Terminal.For(around with { Output = around.Error }, request.Colour));
        }
        else
        {
            if (!request.Diff)
            {
                stop.ThrowIfCancellationRequested();
                PendingFiles.Rewrite(selection, report.Files);
            }

            telling.Tell(Terminal.For(around, request.Colour));
        }

        return !report.Fights.IsEmpty ? ExitCode.Findings
            : request.Diff && !report.Files.IsEmpty ? ExitCode.Findings
            : report.Left.Any(left => left.Reported.Severity == Severity.Error) ? ExitCode.Findings
            : ExitCode.Clean;
    }
}
