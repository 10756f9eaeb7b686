using System.Collections.Immutable;
using System.Globalization;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Features;

/// <summary>Above each procedure: its cards, its refit, its map, and how long it takes; or that it is not proven.</summary>
internal static class LensMethods
{
    /// <summary>Adds the method.</summary>
    public static void Add(MethodTable methods, Workspace workspace) =>
        methods.Request<DocumentParams, ImmutableArray<CodeLens>>("textDocument/codeLens", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked
                ? [.. asked.Tree.Root.Declarations.OfType<ProcedureSyntax>().SelectMany(procedure => Lenses(asked, parameters.TextDocument.Uri, procedure))]
                : []);

    private static IEnumerable<CodeLens> Lenses(Asked asked, string uri, ProcedureSyntax procedure)
    {
        var range = asked.Places.RangeOf(procedure.Name.Span);
        var reports = JobsInText.Reports(asked, procedure).ToList();
        if (reports.Find(report => report.IsProven) is not { } proven || proven.CreatePlan() is not { } plan)
        {
            return reports.Count == 0 ? [] : [new CodeLens(range, new Command("not proven", ""))];
        }

        var arguments = ImmutableArray.Create(new ViewArguments(uri)
        {
            Job = proven.Procedure.Job,
            Options = proven.Options,
            Show = true,
        });
        var state = reports.TrueForAll(report => report.IsProven) ? "proven" : "proven in some variants";
        return
        [
            new CodeLens(range, new Command("Cards", ViewMethods.Pack) { Arguments = arguments }),
            new CodeLens(range, new Command("Refit", ViewMethods.Refit) { Arguments = arguments }),
            new CodeLens(range, new Command("Map", ViewMethods.Map) { Arguments = arguments }),
            new CodeLens(range, new Command($"{state}, about {Minutes(plan.Times.OnePerson)} for one", "")),
        ];
    }

    private static string Minutes(double seconds) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, Math.Round(seconds / 60)):F0} min");
}
