using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>Something that must be true of one variable of the machine's state for an action to be possible.</summary>
public abstract record Need
{
    private protected Need()
    {
    }

    /// <summary>The item it is about.</summary>
    public abstract MachineItem Item { get; }

    /// <summary>The variable it reads.</summary>
    public abstract StateVariable Variable { get; }

    /// <summary>The condition in the machine that asks for it; null where the action itself does.</summary>
    public Condition? Declared { get; init; }

    /// <summary>Whether the need is met while its variable has this value.</summary>
    public abstract bool IsMetBy(int value);

    /// <summary>A value that meets it: what is assumed when a run goes on after a need that was not met.</summary>
    internal abstract int Met { get; }
}
