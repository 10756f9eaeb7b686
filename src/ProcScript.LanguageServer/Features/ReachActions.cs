using ProcScript.Analysis.Reaching;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>Offers to write how a part or a joint of a machine is reached, as a procedure at the end of the file.</summary>
/// <param name="edits">Writes the edits.</param>
internal sealed class ReachActions(EditWriter edits)
{
    /// <summary>How much is searched while somebody waits for a menu.</summary>
    private const long Budget = 2_000_000;

    /// <summary>The procedure for the item whose name the stretch touches.</summary>
    public IEnumerable<CodeAction> Of(Asked asked, TextSpan span)
    {
        var library = asked.Analysis.Library;
        var item = library.Machines.Where(machine => machine.Declared.Path == asked.Path && !machine.HasErrors)
            .SelectMany(machine => machine.Items.Values.Select(one => (Machine: machine, Item: one)))
            .FirstOrDefault(one => one.Item is Part or Joint && one.Item.Declared.Path == asked.Path
                && one.Item.Declared.Span.Start <= span.End && one.Item.Declared.Span.End >= span.Start);
        if (item.Item is null || Report() is not { } report || report.Uses.Length > 1)
        {
            yield break;
        }

        var end = asked.Tree.Text.Content.Length;
        yield return new CodeAction(
            $"Write how to reach the {item.Item.Title}",
            CodeAction.Rewrite,
            edits.Write(asked.Analysis, [new Syntax.Findings.TextEdit(new SourceSpan(asked.Path, new TextSpan(end, 0)), $"{(asked.Tree.Text.Content.EndsWith('\n') ? "" : "\n")}\n{report.Draft}")]));

        ReachReport? Report()
        {
            try
            {
                return LibraryReach.Find(library, asked.Analysis.Report.Settings, new ReachRequest([item.Item.Name], ReachPurpose.Remove)
                {
                    Machine = item.Machine.Name,
                    With = [.. item.Machine.With.Select(option => option.Name)],
                    RunnersUp = 0,
                    Budget = Budget,
                });
            }
            catch (ReachRefusedException)
            {
                return null;
            }
        }
    }
}
