using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Rules.Workshop.Writing;
using ProcScript.LanguageServer.Checking;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Text;
using SourceEdit = ProcScript.Syntax.Findings.TextEdit;

namespace ProcScript.LanguageServer.Features;

/// <summary>Offers to declare what steps name and the machine lacks, and to take out a question of such a draft that is answered.</summary>
/// <param name="edits">Writes the edits.</param>
/// <param name="diagnostics">Writes the findings that they mend.</param>
internal sealed class DraftActions(EditWriter edits, DiagnosticWriter diagnostics)
{
    /// <summary>
    /// For each question in the stretch that it is answered: one by one and never with others, since each asks to look at the machine. The draft
    /// of what a file sees, where a name in the stretch is declared nowhere.
    /// </summary>
    public IEnumerable<CodeAction> Of(Asked asked, TextSpan span)
    {
        foreach (var question in CodeActionMethods.At(asked, span).Where(reported => reported.Finding.Rule == OpenQuestion.Id))
        {
            yield return new CodeAction(
                "Answered at the machine: take this question out", CodeAction.QuickFix, edits.Write(asked.Analysis, [new SourceEdit(new SourceSpan(asked.Path, WithBlanks(asked, question.Finding.Primary.Span)), "")]))
            {
                Diagnostics = [diagnostics.Write(question, asked.Analysis)],
            };
        }

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

    /// <summary>A comment with the blanks before it; where it has its line to itself, that line.</summary>
    private static TextSpan WithBlanks(Asked asked, TextSpan comment)
    {
        var content = asked.Tree.Text.Content;
        var start = comment.Start;
        while (start > 0 && content[start - 1] is ' ' or '\t')
        {
            start--;
        }

        var isAlone = start == 0 || content[start - 1] is '\n' or '\r';
        var end = content.IndexOf('\n', comment.End);
        return TextSpan.FromBounds(start, isAlone ? end < 0 ? content.Length : end + 1 : comment.End);
    }
}
