using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Wording;

/// <summary>Edits that mark an item of a machine. All want a look: which hazard it is only the author knows for certain.</summary>
internal static class HazardEdits
{
    /// <summary>Writes a mark as the first line of the item's block; nothing where it has no block.</summary>
    public static IEnumerable<Fix> Mark(MachineItem item, Hazard hazard)
    {
        if (item.Block is { } block)
        {
            var line = $"hazard {HazardWords.Of(hazard)}";
            yield return new Fix(
                $"Insert `{line}`",
                FixGrade.NeedsLook,
                [new TextEdit(new SourceSpan(block.Path, new TextSpan(block.Span.Start, 0)), line + "  ")]);
        }
    }
}
