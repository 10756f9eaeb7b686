using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;
using ProcScript.Cli.Output;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary><c>build</c>: checks, then writes a pack for each procedure that is proven.</summary>
internal static class BuildVerb
{
    /// <summary>Checks, prints the findings, and writes.</summary>
    public static async Task<ExitCode> RunAsync(BuildRequest request, Surroundings around, CancellationToken stop)
    {
        var templates = TemplateFolder.Read(request.Templates, around.CurrentFolder);
        var library = await CheckedLibrary.RunAsync(request.Input, request.Settings.Read, around, stop);
        var terminal = Terminal.For(around, request.Colour);
        library.PrintFindings(library.Outcome, terminal, stop);
        if (library.Procedures.IsEmpty && library.Findings.Any(reported => reported.Severity == Severity.Error))
        {
            // With errors that leave no procedure, "there is none" would only hide them.
            terminal.WriteLine(new Piece(CheckSummary.Of(library.Outcome)));
            return library.ExitCode(Severity.Error);
        }

        var chosen = PackSelection.Choose(library.Procedures, request.Procedure, request.With);
        var folders = PackFolders.Name([.. chosen.Select(report => report.Procedure)]);
        var output = Path.GetFullPath(request.Output, around.CurrentFolder);
        var written = 0;
        for (var i = 0; i < chosen.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            if (TryWrite(chosen[i], Path.Combine(output, folders[i]), request, templates))
            {
                terminal.WriteLine(new Piece($"wrote {Path.Combine(request.Output, folders[i])}: {string.Join(", ", request.Formats.Select(format => format.FileName))}"));
                written++;
            }
            else
            {
                terminal.WriteLine(new Piece(NotWritten(chosen[i], Path.Combine(output, folders[i]))));
            }
        }

        terminal.WriteLine(new Piece(Summary(written, chosen.Length - written)));
        return written < chosen.Length ? ExitCode.Findings : library.ExitCode(Severity.Error);
    }

    private static bool TryWrite(ProcedureReport report, string folder, BuildRequest request, PackTemplates templates)
    {
        if (report.CreatePlan() is not { } plan)
        {
            return false;
        }

        using PendingFiles files = new();
        foreach (var format in request.Formats)
        {
            var text = format.Write(plan, templates, report.Outcome.OwnSettings.Get(SettingsTable.Layout));
            TemplateFolder.Refuse(text.Faults);
            files.Add(Path.Combine(folder, format.FileName), text.Text);
        }

        files.Commit(replace: true);
        return true;
    }

    /// <summary>An old pack of a job that is no longer proven is the user's to throw away, but he must know of it.</summary>
    private static string NotWritten(ProcedureReport report, string folder)
    {
        var earlier = Directory.Exists(folder) ? $"; what stands in {Path.GetFileName(folder)} is from an earlier build" : "";
        return $"{report.Procedure.Name} is not proven: nothing written{earlier}";
    }

    private static string Summary(int written, int unproven) =>
        $"{Counted.Of(written, "pack")} written" + (unproven == 0 ? "" : $", {Counted.Of(unproven, "procedure")} not proven");
}
