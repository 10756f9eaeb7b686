using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Features;

/// <summary>Pack, refit, way back, map, plan and places of a job as files, so that any client can show them.</summary>
internal sealed class ViewMethods(Workspace workspace, IServerHost host, Connection connection, ClientProfile client)
{
    /// <summary>Writes the pack.</summary>
    public const string Pack = "procscript.view.pack";

    /// <summary>Writes the refit.</summary>
    public const string Refit = "procscript.view.refit";

    /// <summary>Writes the shortest way back from the step at a place.</summary>
    public const string Back = "procscript.view.back";

    /// <summary>Writes the map.</summary>
    public const string Map = "procscript.view.map";

    /// <summary>Writes the plan, which says of every step where it was written.</summary>
    public const string PlanData = "procscript.view.plan";

    /// <summary>Writes where the steps come from, and which steps each stretch of the texts comes to.</summary>
    public const string PlaceData = "procscript.view.places";

    /// <summary>All of them.</summary>
    public static ImmutableArray<string> Commands { get; } = [Pack, Refit, Back, Map, PlanData, PlaceData];

    /// <summary>Adds the method.</summary>
    public void Add(MethodTable methods) => methods.Request<ExecuteCommandParams, WrittenView>("workspace/executeCommand", async (parameters, cancellation) =>
    {
        if (!Commands.Contains(parameters.Command) || parameters.Arguments is not [var arguments])
        {
            throw new RequestRefusedException($"There is no command '{parameters.Command}' with these arguments; there are {string.Join(", ", Commands)}, each with one argument.");
        }

        var asked = await workspace.AskAsync(new TextDocumentIdentifier(arguments.Uri), cancellation).ConfigureAwait(false)
            ?? throw new RequestRefusedException($"{arguments.Uri} belongs to no library that is open.");
        var chosen = Choose(asked, arguments);
        if (parameters.Command != Back)
        {
            return Write(parameters.Command, arguments, asked.Analysis, chosen);
        }

        var (page, after) = arguments.Position is { } position
            ? BackView.Markdown(asked, chosen, asked.OffsetOf(position))
            : throw new RequestRefusedException($"{Back} takes the place of a step.");
        return Written(parameters.Command, arguments, asked.Analysis, chosen, (string.Create(CultureInfo.InvariantCulture, $"{chosen.Procedure.Job}.back-{after}.md"), page));
    });

    private static ProcedureReport Choose(Asked asked, ViewArguments arguments)
    {
        var here = arguments.Position is { } position ? JobsInText.DeclarationAt(asked, asked.OffsetOf(position)) as ProcedureSyntax : null;
        var reports = asked.Analysis.Report.Procedures
            .Where(report => arguments.Job is { } job
                ? report.Procedure.Job == job || report.Procedure.Name == job
                : report.Procedure.Declared.Path == asked.Path && (here is null || report.Procedure.Declared.Span == here.Name.Span))
            .OrderByDescending(report => report.Procedure.Declared.Path == asked.Path)
            .ToList();
        var wanted = arguments.Options ?? [];
        return reports.Find(report => report.Options.ToHashSet(StringComparer.Ordinal).SetEquals(wanted))
            ?? reports.FirstOrDefault()
            ?? throw new RequestRefusedException("There is no such procedure here.");
    }

    /// <summary>The procedure with all arguments in all variants.</summary>
    private static ImmutableArray<ViewChoice> Choices(LibraryAnalysis analysis, ProcedureReport chosen) =>
    [
        .. analysis.Report.Procedures
            .Where(report => report.Procedure.Declared == chosen.Procedure.Declared)
            .Select(report => new ViewChoice(report.Procedure.Job, report.Options, report.IsProven)),
    ];

    private WrittenView Write(string command, ViewArguments arguments, LibraryAnalysis analysis, ProcedureReport report)
    {
        var job = report.Procedure.Job;
        var plan = report.CreatePlan() ?? throw new RequestRefusedException($"{job} is not proven: fix its errors first.");
        var (name, text) = command switch
        {
            Pack => ($"{job}.html", Pages(plan, report)),
            Refit => ($"{job}.refit.md", RefitPreview.Markdown(plan, analysis.Files.UriOf)),
            PlaceData => ($"{job}.places.json", PlaceView.Json(analysis, report, plan)),
            PlanData => ($"{job}.plan.json", WorkPack.Json(plan)),
            _ => ($"{job}.map.svg", WorkPack.Map(plan) is { Length: > 0 } map
                ? map
                : throw new RequestRefusedException($"{job} moves no part that a map could show, or more than fit on one: the pack has a table.")),
        };
        return Written(command, arguments, analysis, report, (name, text));
    }

    private WrittenView Written(string command, ViewArguments arguments, LibraryAnalysis analysis, ProcedureReport report, (string Name, string Text) file)
    {
        try
        {
            var uri = DocumentUri.FromPath(host.Write(arguments.Folder is { } folder ? DocumentUri.ToPath(folder) : null, file.Name, file.Text));
            if (client.ShowsDocuments && arguments.Show == true)
            {
                connection.Ask("window/showDocument", new ShowDocumentParams(uri) { External = command == Pack });
            }

            return new WrittenView(uri, report.Procedure.Job, report.Procedure.Title, report.Options, Choices(analysis, report));
        }
        catch (IOException failure)
        {
            throw new RequestRefusedException(failure.Message);
        }
    }

    private static string Pages(Plan plan, ProcedureReport report)
    {
        var pack = WorkPack.Html(plan, PackTemplates.Standard, report.Outcome.OwnSettings.Get(SettingsTable.Layout));
        return pack.Succeeded ? pack.Text : throw new InvalidOperationException("The standard templates have a fault.");
    }
}
