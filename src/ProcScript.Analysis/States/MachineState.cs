using System.Collections.Immutable;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.States;

/// <summary>What a machine is like at one moment: a value for each variable, in one array.</summary>
public sealed class MachineState
{
    private readonly StateLayout _layout;
    private readonly int[] _values;

    private MachineState(StateLayout layout, int[] values)
    {
        _layout = layout;
        _values = values;
    }

    /// <summary>The machine as it comes in: all joints closed, all parts fitted, nothing temporary on it, energies live, fluids in, controls home.</summary>
    public static MachineState Whole(Machine machine) => Whole(new StateLayout(machine));

    internal static MachineState Whole(StateLayout layout)
    {
        var state = new MachineState(layout, new int[layout.Size]);
        foreach (var joint in layout.Machine.Joints)
        {
            state[new StateVariable(StateKind.Attached, joint.Index)] = joint.IsTemporary ? 0 : joint.Count;
        }

        foreach (var part in layout.Machine.Parts)
        {
            if (part.IsTemporary)
            {
                state[new StateVariable(StateKind.Place, part.Index)] = (int)PartPlace.Out;
            }
        }

        foreach (var energy in layout.Machine.Energies)
        {
            state[new StateVariable(StateKind.Live, energy.Index)] = 1;
        }

        foreach (var fluid in layout.Machine.Fluids)
        {
            state[new StateVariable(StateKind.Full, fluid.Index)] = 1;
        }

        return state;
    }

    /// <summary>The value of a variable.</summary>
    public int this[StateVariable variable]
    {
        get => _values[_layout.Slot(variable)];
        internal set => _values[_layout.Slot(variable)] = value;
    }

    /// <summary>How many of a joint or cover are attached.</summary>
    public int Attached(Joint joint) => this[new StateVariable(StateKind.Attached, joint.Index)];

    /// <summary>Where a part is.</summary>
    public PartPlace Place(Part part) => (PartPlace)this[new StateVariable(StateKind.Place, part.Index)];

    /// <summary>The variables whose values differ.</summary>
    public IEnumerable<StateVariable> Differences(MachineState other)
    {
        for (var slot = 0; slot < _values.Length; slot++)
        {
            if (_values[slot] != other._values[slot])
            {
                yield return _layout.Variable(slot);
            }
        }
    }

    /// <summary>Makes a change.</summary>
    internal void Apply(StateChange change) => this[change.Variable] = change.After;

    /// <summary>Makes changes.</summary>
    internal void Apply(ImmutableArray<StateChange> changes)
    {
        foreach (var change in changes)
        {
            Apply(change);
        }
    }

    /// <summary>A second state with the same values.</summary>
    public MachineState Copy() => new(_layout, [.. _values]);
}
