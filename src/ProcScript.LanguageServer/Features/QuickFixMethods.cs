using System.Collections.Immutable;
using ProcScript.LanguageServer.Checking;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Findings;

namespace ProcScript.LanguageServer.Features;

/// <summary>The cures that findings bring along, as edits to apply.</summary>
internal static class QuickFixMethods
{
    /// <summary>Adds the method.</summary>
    public static void Add(MethodTable methods, Workspace workspace, EditWriter edits, DiagnosticWriter diagnostics) =>
        methods.Request<CodeActionParams, ImmutableArray<CodeAction>>("textDocument/codeAction", async (parameters, cancellation) =>
        {
            var isWanted = parameters.Context.Only is not { } only || only.Any(kind => kind.Length == 0 || kind == CodeAction.QuickFix);
            if (!isWanted || await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is not { } asked)
            {
                return [];
            }

            var span = asked.Places.SpanOf(parameters.Range);
            return
            [
                .. from reported in asked.Analysis.Report.Findings
                   let place = reported.Finding.Primary
                   where place.Path == asked.Path && place.Span.Start <= span.End && place.Span.End >= span.Start
                   from fix in reported.Finding.Fixes
                   where fix.Grade != FixGrade.DisplayOnly
                   select new CodeAction(fix.Title, CodeAction.QuickFix, edits.Write(asked.Analysis, fix.Edits))
                   {
                       Diagnostics = [diagnostics.Write(reported, asked.Analysis)],
                       IsPreferred = fix.Grade == FixGrade.Safe && reported.Finding.Fixes.Length == 1 ? true : null,
                   },
            ];
        });
}
