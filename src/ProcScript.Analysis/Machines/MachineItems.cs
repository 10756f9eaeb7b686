using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Machines;

/// <summary>The item of a machine that a variable of its state tells of.</summary>
internal static class MachineItems
{
    /// <summary>The item.</summary>
    public static MachineItem Of(Machine machine, StateVariable variable) => variable.Kind switch
    {
        StateKind.Attached or StateKind.Slack or StateKind.Capped => machine.Joints[variable.Index],
        StateKind.Place or StateKind.Propped or StateKind.Plugged => machine.Parts[variable.Index],
        StateKind.Live => machine.Energies[variable.Index],
        StateKind.Full => machine.Fluids[variable.Index],
        _ => machine.Controls[variable.Index],
    };
}
