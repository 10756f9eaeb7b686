using ProcScript.Analysis;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;
using ProcScript.Cards.Labels;
using ProcScript.Cli.Crews;
using ProcScript.Cli.Output;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary><c>build</c>: checks, then writes a pack for each procedure that is proven and has its pictures.</summary>
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

        ICrewScheduler scheduler = request is { Crew.People: > 1, Exact: true } ? OutsideScheduler.Find(around, request.Seconds) : new ListScheduler();
        if (request.Crew is { } people)
        {
            CertifiedPeople.Check(people, library.Report.Library);
        }

        var told = library.Told(stop);
        var chosen = PackSelection.Choose(library.Procedures, request.Procedure, request.With);
        var folders = PackFolders.Name([.. chosen.Select(report => report.Procedure)]);
        var output = Path.GetFullPath(request.Output, around.CurrentFolder);
        var (written, unproven) = (0, 0);
        for (var i = 0; i < chosen.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            var report = told[library.Procedures.IndexOf(chosen[i])];
            if (report.CreatePlan() is not { } plan)
            {
                unproven++;
                terminal.WriteLine(new Piece(NotWritten(chosen[i], "is not proven", Path.Combine(output, folders[i]))));
            }
            else if (library.Report.PicturesInError(plan) is [_, ..] lacking)
            {
                terminal.WriteLine(new Piece(NotWritten(chosen[i], $"lacks {string.Join(", ", lacking)}", Path.Combine(output, folders[i]))));
            }
            else
            {
                // Who is alone works in the order of the cards: their pack needs nothing more.
                var crew = request.Crew is { People: > 1 } size ? report.CreateCrewPlan(size, scheduler) : null;
                var files = Write(plan, crew, report.Outcome.OwnSettings, Path.Combine(output, folders[i]), request, templates);
                terminal.WriteLine(new Piece($"wrote {Path.Combine(request.Output, folders[i])}: {string.Join(", ", files)}"));
                written++;
            }
        }

        terminal.WriteLine(new Piece(Summary(written, unproven, chosen.Length - written - unproven)));
        return written < chosen.Length ? ExitCode.Findings : library.ExitCode(Severity.Error);
    }

    /// <summary>Writes a pack, and says which files.</summary>
    private static List<string> Write(Plan plan, CrewPlan? crew, PathSettings settings, string folder, BuildRequest request, PackTemplates templates)
    {
        using PendingFiles files = new();
        var written = new List<string>();
        foreach (var format in request.Formats)
        {
            Add(format.FileName, format.Write(plan, templates, settings, crew));
        }

        if (crew is not null && request.Formats.Any(format => format.Name == "json"))
        {
            Add("crew.json", new PackText(WorkPack.CrewText(crew), []));
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

    /// <summary>An old pack of a job that is no longer right is the user's to throw away, but he must know of it.</summary>
    private static string NotWritten(ProcedureReport report, string why, string folder)
    {
        var earlier = Directory.Exists(folder) ? $"; what stands in {Path.GetFileName(folder)} is from an earlier build" : "";
        return $"{report.Procedure.Name} {why}: nothing written{earlier}";
    }

    private static string Summary(int written, int unproven, int lacking) =>
        $"{Counted.Of(written, "pack")} written"
        + (unproven == 0 ? "" : $", {Counted.Of(unproven, "procedure")} not proven")
        + (lacking == 0 ? "" : $", {Counted.Of(lacking, "procedure")} without a picture");
}
