using System.Globalization;
using ProcScript.Analysis;
using ProcScript.Analysis.Reaching;
using ProcScript.Cards.Reaching;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>The shortest way back from the step at the cursor, as if the work stopped right behind it.</summary>
internal static class BackView
{
    /// <summary>The page, and the number of the step that it goes back from.</summary>
    /// <exception cref="RequestRefusedException">There is no such step, or no way back.</exception>
    public static (string Page, int After) Markdown(Asked asked, ProcedureReport report, int offset)
    {
        var after = LastDone(asked, report, offset)
            ?? throw new RequestRefusedException("Nothing has been done yet at the cursor: put it at a step of the strip or of the work.");
        try
        {
            return (AnswerText.Page(LibraryBack.Find(asked.Analysis.Library, asked.Analysis.Report.Settings, report.Procedure, after)), after);
        }
        catch (ReachRefusedException refused)
        {
            throw new RequestRefusedException($"{char.ToUpperInvariant(refused.Message[0])}{refused.Message[1..]}");
        }
    }

    /// <summary>Offers it, where the cursor is at a stage or the work of a procedure, or at one of its steps.</summary>
    public static IEnumerable<CodeAction> Offer(Asked asked, string uri, TextSpan span) =>
        asked.Tree.Root.Declarations.OfType<ProcedureSyntax>().FirstOrDefault(procedure => procedure.Span.Touches(span.Start)) is { } procedure
        && procedure.DescendantsAndSelf().Any(node => node is StageSyntax or WorkSyntax or DoSyntax && node.Span.Touches(span.Start))
        && JobsInText.Reports(asked, procedure).FirstOrDefault() is { } report
        && LastDone(asked, report, span.Start) is { } after
            ? [new CodeAction(string.Create(CultureInfo.InvariantCulture, $"Show the way back from step {after}"), CodeAction.Show, null)
                {
                    Command = new Command("Show the way back", ViewMethods.Back)
                    {
                        Arguments = [new ViewArguments(uri) { Position = asked.Places.PositionOf(span.Start), Options = report.Options, Show = true }],
                    },
                }]
            : [];

    /// <summary>The number, as cards have it, of the last step that is written at the cursor or before it; null where none is.</summary>
    private static int? LastDone(Asked asked, ProcedureReport report, int offset)
    {
        // Actions count from 0, cards from 1.
        var done = (report.Outcome.Strip?.Actions ?? []).Where(action => ActionSource.Of(action.Origin)
            .Any(source => source.Calls.Prepend(source.Source).Any(place => place.Path == asked.Path && report.Procedure.Declared.Path == asked.Path
                && place.Span.Start >= report.Procedure.Declared.Span.Start && place.Span.Start <= offset))).ToList();
        return done.Count == 0 ? null : done.Max(action => action.Number) + 1;
    }
}
