using ProcScript.Analysis.Drafting;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Verbs;

/// <summary><c>draft</c>: declares what steps name and their machines lack, or shows what it would write.</summary>
internal static class DraftVerb
{
    /// <summary>Drafts, writes or shows, and tells.</summary>
    public static async Task<ExitCode> RunAsync(DraftVerbRequest request, Surroundings around, CancellationToken stop)
    {
        var selection = SourceSelection.Find(request.Input, around.CurrentFolder);
        var printsText = selection.IsForOutput(!request.Diff);
        DiskSourceStore store = new(selection, around.OpenInput);
        var settings = request.Settings.Read(store, around.Today);
        var report = await Task.Run(() => LibraryDraft.Run(store, settings, new DraftRequest { MayChange = selection.IsGiven }, stop), stop).WaitAsync(stop);
        store.RefuseUnreadable();

        ScreenPaths paths = new(selection, around.CurrentFolder);
        if (printsText)
        {
            around.Output.Write(report.Files is [var only] ? only.After : store.Read(selection.StandardInput!).Content);
            TellTroubles(report, store, Terminal.For(around with { Output = around.Error }, request.Colour), paths);
            return report.Troubles.IsEmpty ? ExitCode.Clean : ExitCode.Findings;
        }

        if (!request.Diff)
        {
            stop.ThrowIfCancellationRequested();
            PendingFiles.Rewrite(selection, report.Files);
        }

        Tell(report, request, store, Terminal.For(around, request.Colour), paths);
        return !report.Troubles.IsEmpty || (request.Diff && !report.Files.IsEmpty) ? ExitCode.Findings : ExitCode.Clean;
    }

    private static void Tell(DraftReport report, DraftVerbRequest request, DiskSourceStore store, Terminal terminal, ScreenPaths paths)
    {
        foreach (var file in report.Files)
        {
            if (request.Diff)
            {
                UnifiedDiff.Write(terminal, paths, file.Path, file.Before, file.After);
            }
            else
            {
                terminal.WriteLine(new Piece($"drafted {paths.Of(file.Path)}"));
            }
        }

        TellTroubles(report, store, terminal, paths);
        var declared = report.Files.IsEmpty ? "nothing to draft" : $"{(request.Diff ? "would declare" : "declared")} {Counted.Of(report.Declared, "thing")} in {Counted.Of(report.Files.Length, "file")}";
        terminal.WriteLine(new Piece($"{declared}; {Questions(report.Questions)}"));
    }

    /// <summary>What is open, and how it is closed.</summary>
    internal static string Questions(int count) => count == 0
        ? "no questions open"
        : $"{Counted.Of(count, "question")} open: 'procscript check' lists them; put each right and take its comment out";

    private static void TellTroubles(DraftReport report, DiskSourceStore store, Terminal terminal, ScreenPaths paths)
    {
        foreach (var trouble in report.Troubles)
        {
            var line = new SourceText(trouble.Place.Path, store.Read(trouble.Place.Path).Content ?? "").LineAt(trouble.Place.Span.Start) + 1;
            terminal.WriteLine(new Piece(PrintableText.Of($"not drafted {paths.Of(trouble.Place.Path)}:{line}: {trouble.Because}"), Ink.Warning));
        }
    }
}
