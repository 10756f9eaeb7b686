using ProcScript.Analysis.Drafting;
using ProcScript.LanguageServer.Checking;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>Offers to declare what steps name and the machine lacks.</summary>
/// <param name="edits">Writes the edits.</param>
/// <param name="diagnostics">Writes the findings that they mend.</param>
internal sealed class DraftActions(EditWriter edits, DiagnosticWriter diagnostics)
{
    /// <summary>The draft of what a file sees, where a name in the stretch is declared nowhere.</summary>
    public IEnumerable<CodeAction> Of(Asked asked, TextSpan span)
    {
        var unknown = CodeActionMethods.At(asked, span).Where(reported => reported.Finding.Rule == UnknownName.Id).ToList();
        if (unknown.Count == 0)
        {
            yield break;
        }

        var draft = LibraryDraft.Of(asked.Analysis.Library, new DraftRequest { MayChange = asked.Analysis.Names.Reach(asked.Path).Contains });
        if (!draft.Files.IsEmpty)
        {
            yield return new CodeAction("Draft: declare what the steps name", CodeAction.QuickFix, edits.Write(asked.Analysis, draft.Files.Select(file => file.Edit())))
            {
                Diagnostics = [.. unknown.Select(reported => diagnostics.Write(reported, asked.Analysis))],
            };
        }
    }
}
