using ProcScript.Analysis.Refactoring;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>Other ways to write what is selected, and the fixes of a whole file, as actions.</summary>
/// <param name="edits">Writes the edits.</param>
internal sealed class RefactoringActions(EditWriter edits)
{
    /// <summary>The refactorings of a stretch.</summary>
    public IEnumerable<CodeAction> Of(Asked asked, TextSpan span, Func<string, bool> isWanted, CancellationToken cancellation) =>
        from change in Refactorings.For(asked.Analysis.Report, asked.Path, span, cancellation)
        let kind = change.Sort == RefactoringSort.Extract ? CodeAction.Extract : CodeAction.Rewrite
        where isWanted(kind)
        select new CodeAction(change.Title, kind, edits.Write(asked.Analysis, change.Edits));

    /// <summary>All fixes of the file that keep its meaning.</summary>
    public IEnumerable<CodeAction> FixAll(Asked asked, CancellationToken cancellation) =>
        RuleFixes.Safe(asked.Analysis.Report, asked.Path, cancellation) is { IsEmpty: false } safe
            ? [new CodeAction("Apply all safe fixes in this file", CodeAction.FixAll, edits.Write(asked.Analysis, safe))]
            : [];
}
