using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>What goes back as a new one: whole parts and joints, and of some joints a few pieces.</summary>
internal sealed class RenewedItems
{
    private readonly HashSet<MachineItem> _whole = [];
    private readonly Dictionary<Joint, int> _pieces = [];

    /// <summary>The parts and the whole joints.</summary>
    public IReadOnlySet<MachineItem> Whole => _whole;

    /// <summary>How many pieces of the joints that are not replaced whole.</summary>
    public IReadOnlyDictionary<Joint, int> Pieces => _pieces;

    /// <summary>The pieces that a step asks for beyond those that are off and still the old ones; null where there are enough.</summary>
    public TooFewOff? Lacking(Step step, MachineState state)
    {
        if (step is not { Verb: Verb.Replace, Target: Joint joint, Count: { } asked })
        {
            return null;
        }

        var renewed = _whole.Contains(joint) ? joint.Count : _pieces.GetValueOrDefault(joint);
        // What is only still on has its own need.
        return asked > joint.Count || (renewed > 0 && asked + renewed > joint.Count - state.Attached(joint))
            ? new TooFewOff(step, joint, asked, joint.Count - state.Attached(joint), renewed)
            : null;
    }

    /// <summary>Takes what a <c>replace</c> step replaces.</summary>
    public void Add(Step step)
    {
        if (step is { Target: Joint joint, Count: { } count } && !_whole.Contains(joint)
            && _pieces.GetValueOrDefault(joint) + count is var pieces && pieces < joint.Count)
        {
            _pieces[joint] = pieces;
        }
        else if (_whole.Add(step.Target!) && step.Target is Joint whole)
        {
            _pieces.Remove(whole);
        }
    }
}
