using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;
using ProcScript.Cards.Labels;
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

        var told = library.Told(stop);
        var chosen = PackSelection.Choose(library.Procedures, request.Procedure, request.With);
        var folders = PackFolders.Name([.. chosen.Select(report => report.Procedure)]);
        var output = Path.GetFullPath(request.Output, around.CurrentFolder);
        var written = 0;
        for (var i = 0; i < chosen.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            if (TryWrite(told[library.Procedures.IndexOf(chosen[i])], Path.Combine(output, folders[i]), request, templates) is { } files)
            {
                terminal.WriteLine(new Piece($"wrote {Path.Combine(request.Output, folders[i])}: {string.Join(", ", files)}"));
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

    /// <summary>The files that were written; null where the procedure is not proven.</summary>
    private static List<string>? TryWrite(ProcedureReport report, string folder, BuildRequest request, PackTemplates templates)
    {
        if (report.CreatePlan() is not { } plan)
        {
            return null;
        }

        var settings = report.Outcome.OwnSettings;
        using PendingFiles files = new();
        var written = new List<string>();
        foreach (var format in request.Formats)
        {
            Add(format.FileName, format.Write(plan, templates, settings));
        }

        if (!plan.Bags.IsEmpty && LabelSheet.Of(settings.Get(SettingsTable.Labels)) is { } sheet && request.Formats.Any(format => format.Name != "json"))
        {
            Add("labels.html", WorkPack.Labels(plan, templates, sheet));
        }

        if (request.Formats.Any(format => format.FileName == PackFormat.MarkdownFile))
        {
            foreach (var picture in WorkPack.Pictures(plan))
            {
                files.Add(Path.Combine(folder, picture.Name), picture.Content.AsSpan());
            }
        }

        files.Commit(replace: true);
        return written;

        void Add(string name, PackText text)
        {
            TemplateFolder.Refuse(text.Faults);
            files.Add(Path.Combine(folder, name), text.Text);
            written.Add(name);
        }
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
