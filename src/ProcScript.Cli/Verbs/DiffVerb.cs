using ProcScript.Analysis;
using ProcScript.Analysis.Comparing;
using ProcScript.Cards.Changes;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Cli.Versions;

namespace ProcScript.Cli.Verbs;

/// <summary><c>diff</c>: says in shop words what the packs of one state of a library say otherwise than those of another.</summary>
internal static class DiffVerb
{
    /// <summary>Checks both states, compares their packs, and tells.</summary>
    public static async Task<ExitCode> RunAsync(DiffRequest request, Surroundings around, CancellationToken stop)
    {
        var (old, fresh) = await LibraryState.FindAsync(request.Old, request.New, request.Root, around, stop);
        var (after, change) = await Task.Run(
            () =>
            {
                var (was, now) = (Check(old), Check(fresh));
                return (now, LibraryComparison.Of(was.Procedures, now.Procedures, PrintedPapers.Void));
            },
            stop).WaitAsync(stop);
        Array.ForEach([old, fresh], state => (state.Store as DiskSourceStore)?.RefuseUnreadable());

        var losses = LibraryComparison.Losses(change, after.Procedures);
        if (request.Format == DiffFormat.Json)
        {
            around.Output.Write(LogCommands.DisarmJson(ChangeReport.Json(change)));
        }
        else if (request.Format == DiffFormat.Markdown)
        {
            around.Output.Write(LogCommands.DisarmLines(ChangeReport.Markdown(change)));
        }
        else
        {
            var terminal = Terminal.For(around, request.Colour);
            FindingPrinter printer = new(terminal, path => after.Library.Trees.GetValueOrDefault(path)?.Text, new ScreenPaths(fresh.Selection, around.CurrentFolder));
            foreach (var loss in losses)
            {
                printer.Print(new ReportedFinding(loss, loss.Rule.DefaultSeverity));
            }

            foreach (var line in ChangeReport.Text(change).TrimEnd('\n').Split('\n'))
            {
                terminal.WriteLine(new Piece(PrintableText.Of(line), InkOf(line)));
            }
        }

        return losses.IsEmpty && change.NoLongerProven.IsEmpty ? ExitCode.Clean : ExitCode.Findings;

        // Each state is checked by its own settings, on the same day.
        LibraryReport Check(LibraryState state) =>
            LibraryCheck.Run(state.Store, request.Settings.Read(state.Store, around.Today), stop).About(state.IsGiven);
    }

    private static Ink InkOf(string line) => line.TrimStart() switch
    {
        ['+', ' ', ..] => Ink.Added,
        ['-', ' ', ..] => Ink.Removed,
        ['!', ' ', ..] => Ink.Warning,
        _ when line.Length > 0 && line[0] != ' ' => Ink.Strong,
        _ => Ink.Plain,
    };
}
