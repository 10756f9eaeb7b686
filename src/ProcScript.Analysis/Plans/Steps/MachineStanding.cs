using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>What of a machine is not whole in a state of a run, as cards tell it: what does not go back is left out.</summary>
/// <param name="strip">The strip.</param>
/// <param name="state">The state.</param>
/// <param name="book">The language.</param>
internal sealed class MachineStanding(StripRun strip, MachineState state, Wordbook book)
{
    private readonly Machine _machine = strip.Procedure.Machine;

    /// <summary>The parts that are off and go back, or whose likes do.</summary>
    public IEnumerable<Part> PartsOff => _machine.Parts.Where(IsOff);

    /// <summary>The joints that are not closed, without those that another open thing tells of.</summary>
    public IEnumerable<Joint> JointsOpen => _machine.Joints.Where(IsOpen);

    /// <summary>The parts that are on the machine for the job alone.</summary>
    public IEnumerable<Part> TemporaryOn => _machine.Parts.Where(part => part.IsTemporary && state.Place(part) != PartPlace.Out);

    /// <summary>The fluids that are out.</summary>
    public IEnumerable<Fluid> FluidsOut => _machine.Fluids.Where(fluid => Value(StateKind.Full, fluid) == 0);

    /// <summary>The parts that are propped.</summary>
    public IEnumerable<Part> PartsPropped => _machine.Parts.Where(part => Value(StateKind.Propped, part) == 1);

    /// <summary>The controls that are not at home.</summary>
    public IEnumerable<Control> ControlsAway => _machine.Controls.Where(control => Value(StateKind.Position, control) != 0);

    /// <summary>The value of a variable.</summary>
    public int Value(StateKind kind, MachineItem item) => state[new StateVariable(kind, item.Index)];

    /// <summary>How a part stands that is off.</summary>
    public string StateOf(Part part) => book.Say(state.Place(part) == PartPlace.Out ? "state.out" : "state.aside");

    /// <summary>How a joint is; empty where it is whole.</summary>
    public string StateOf(Joint joint) => state.Attached(joint) switch
    {
        0 => book.Say("state.open"),
        var on when on < joint.Count => book.Say("state.on-of", ("on", on), ("count", joint.Count)),
        _ when Value(StateKind.Slack, joint) == 1 => book.Say("state.slack"),
        _ => "",
    };

    /// <summary>Whether a joint is not closed and goes back, and no other open thing tells of it.</summary>
    public bool IsOpen(Joint joint) => !IsWhole(joint) && !joint.IsTemporary && GoesBack(joint) && !IsToldByAnother(joint);

    /// <summary>Whether a part is off that goes back, or whose like does.</summary>
    public bool IsOff(Part part) => state.Place(part) != PartPlace.Fitted && !part.IsTemporary && GoesBack(part);

    /// <summary>Whether a joint is closed and tight.</summary>
    public bool IsWhole(Joint joint) => state.Attached(joint) >= joint.Count && Value(StateKind.Slack, joint) != 1;

    private bool GoesBack(MachineItem item) => !strip.Discarded.Contains(item);

    /// <summary>What holds a part that is off is off with it, and so is a cover of an open joint. An open plug or line is told all the same.</summary>
    private bool IsToldByAnother(Joint joint) => joint.Role switch
    {
        JointRole.Held => IsOnSomethingOff(joint),
        JointRole.Cover => IsOnSomethingOff(joint) || !IsWhole(joint.Over!),
        _ => false,
    };

    private bool IsOnSomethingOff(Joint joint) => IsCarriedOff(joint.Owner) || IsCarriedOff(joint.Other);

    private bool IsCarriedOff(Part? part) => part is not null && (IsOff(part) || IsCarriedOff(part.Parent));
}
