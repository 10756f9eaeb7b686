using System.Collections.Immutable;
using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Mending;
using ProcScript.LanguageServer.Checking;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Text;
using SourceEdit = ProcScript.Syntax.Findings.TextEdit;

namespace ProcScript.LanguageServer.Features;

/// <summary>Offers to declare what steps name and the machine lacks.</summary>
/// <param name="edits">Writes the edits.</param>
/// <param name="diagnostics">Writes the findings that they mend.</param>
internal sealed class DraftActions(EditWriter edits, DiagnosticWriter diagnostics)
{
    private const string UnknownName = "PRC1101";

    /// <summary>The draft of what a file sees, where a name in the stretch is declared nowhere.</summary>
    public IEnumerable<CodeAction> Of(Asked asked, TextSpan span)
    {
        var unknown = asked.Analysis.Report.Findings
            .Where(reported => reported.Finding.Rule.Code == UnknownName && reported.Finding.Primary is var place
                && place.Path == asked.Path && place.Span.Start <= span.End && place.Span.End >= span.Start)
            .ToList();
        if (unknown.Count == 0)
        {
            yield break;
        }

        var library = asked.Analysis.Library;
        var reach = FileUses.Reach([asked.Path], path => FileUses.Of(path, library.Trees[path]).Where(library.Trees.ContainsKey));
        var draft = LibraryDraft.Of(library, new DraftRequest { MayChange = reach.Contains });
        if (!draft.Files.IsEmpty)
        {
            yield return new CodeAction("Draft: declare what the steps name", CodeAction.QuickFix, edits.Write(asked.Analysis, draft.Files.Select(Change)))
            {
                Diagnostics = [.. unknown.Select(reported => diagnostics.Write(reported, asked.Analysis)).ToImmutableArray()],
            };
        }
    }

    /// <summary>What of a file is another now, without what is the same before and behind it.</summary>
    private static SourceEdit Change(MendedFile file)
    {
        var (before, after) = (file.Before, file.After);
        var head = before.AsSpan().CommonPrefixLength(after);
        var most = Math.Min(before.Length, after.Length) - head;
        var tail = 0;
        while (tail < most && before[^(tail + 1)] == after[^(tail + 1)])
        {
            tail++;
        }

        // Nothing is cut between the two halves of a letter or of a line break.
        head -= head > 0 && (char.IsHighSurrogate(before[head - 1]) || before[head - 1] == '\r') ? 1 : 0;
        tail -= tail > 0 && (char.IsLowSurrogate(before[^tail]) || before[^tail] == '\n') ? 1 : 0;
        return new SourceEdit(new SourceSpan(file.Path, TextSpan.FromBounds(head, before.Length - tail)), after[head..^tail]);
    }
}
