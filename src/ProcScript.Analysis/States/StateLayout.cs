using ProcScript.Model.Machines;

namespace ProcScript.Analysis.States;

/// <summary>Where each variable of a machine lies in the array of values.</summary>
internal sealed class StateLayout
{
    private static readonly StateKind[] Kinds = Enum.GetValues<StateKind>();
    private readonly int[] _starts;

    /// <summary>Lays out a machine.</summary>
    public StateLayout(Machine machine)
    {
        Machine = machine;
        _starts = new int[Kinds.Length + 1];
        foreach (var kind in Kinds)
        {
            _starts[(int)kind + 1] = _starts[(int)kind] + Items(machine, kind);
        }
    }

    /// <summary>The machine.</summary>
    public Machine Machine { get; }

    /// <summary>How many variables there are.</summary>
    public int Size => _starts[^1];

    /// <summary>The place of a variable.</summary>
    public int Slot(StateVariable variable) => _starts[(int)variable.Kind] + variable.Index;

    /// <summary>The variable at a place.</summary>
    public StateVariable Variable(int slot)
    {
        var kind = Kinds.Length - 1;
        while (_starts[kind] > slot)
        {
            kind--;
        }

        return new StateVariable((StateKind)kind, slot - _starts[kind]);
    }

    private static int Items(Machine machine, StateKind kind) => kind switch
    {
        StateKind.Attached or StateKind.Slack or StateKind.Capped => machine.Joints.Length,
        StateKind.Place or StateKind.Propped or StateKind.Plugged => machine.Parts.Length,
        StateKind.Live => machine.Energies.Length,
        StateKind.Full => machine.Fluids.Length,
        _ => machine.Controls.Length,
    };
}
