using ProcScript.Analysis.Needs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Runs;

/// <summary>Something that the author says does not go back.</summary>
/// <param name="Item">A part, with all inside it and their joints; or a joint with its covers; or a cover.</param>
/// <param name="Because">Why; Markdown.</param>
/// <param name="Step">The step.</param>
public sealed record Discard(MachineItem Item, string Because, Step Step)
{
    /// <summary>How many actions were performed before it.</summary>
    public int After { get; init; }

    /// <summary>What has to be true for it.</summary>
    internal Need Need => Item is Part part ? new PartOut(part) : new JointOff((Joint)Item);
}
