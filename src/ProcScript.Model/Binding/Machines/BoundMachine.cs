using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Machines;

namespace ProcScript.Model.Binding.Machines;

/// <summary>A machine in one variant, with what binding it had to say.</summary>
/// <param name="Outline">The outline it was made from.</param>
/// <param name="Variant">The options that are on: a bit each.</param>
/// <param name="Machine">The machine.</param>
/// <param name="Sink">The findings.</param>
/// <param name="Trouble">What was wrong with the declaration when it was made.</param>
internal sealed record BoundMachine(MachineOutline Outline, ulong Variant, Machine Machine, FindingSink Sink, (bool IsFaulty, bool MayBeCutShort) Trouble)
{
    /// <summary>Whether something is wrong with the machine in this variant.</summary>
    public bool HasErrors => Outline.HasErrors || Sink.HasErrors;
}
