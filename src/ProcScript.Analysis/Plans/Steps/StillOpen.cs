using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>What a job has opened and not closed again when an energy comes back.</summary>
internal sealed class StillOpen
{
    private readonly StripRun _strip;
    private readonly ImmutableArray<PerformedAction> _actions;
    private readonly MachineState _state;

    private StillOpen(StripRun strip, RefitRun refit) =>
        (_strip, _actions, _state) = (strip, [.. strip.Actions, .. refit.Actions], strip.Start.Copy());

    /// <summary>By the number of each step that restores an energy: what is open then, parts first, then joints, then fluids.</summary>
    public static IReadOnlyDictionary<int, ImmutableArray<PlanOpenItem>> Of(StripRun strip, RefitRun refit) => new StillOpen(strip, refit).Walk();

    private Dictionary<int, ImmutableArray<PlanOpenItem>> Walk()
    {
        var open = new Dictionary<int, ImmutableArray<PlanOpenItem>>();
        foreach (var (at, action) in _actions.Index())
        {
            if (action.Verb == Verb.Restore)
            {
                open.Add(StepList.NumberOf(action.Number), [.. Items(at)]);
            }

            foreach (var change in action.Changes)
            {
                _state.Apply(change);
            }
        }

        return open;
    }

    private IEnumerable<PlanOpenItem> Items(int at)
    {
        var machine = _strip.Procedure.Machine;
        foreach (var part in machine.Parts.Where(IsOff))
        {
            yield return Item(part, _state.Place(part) == PartPlace.Out ? "out" : "aside", StateKind.Place, at);
        }

        foreach (var part in machine.Parts.Where(part => part.IsTemporary && _state.Place(part) != PartPlace.Out))
        {
            yield return Item(part, "still on", StateKind.Place, at);
        }

        foreach (var joint in machine.Joints.Where(joint => !joint.IsTemporary && GoesBack(joint) && !IsToldByAnother(joint)))
        {
            if (StateOf(joint) is { Length: > 0 } state)
            {
                yield return Item(joint, state, _state.Attached(joint) < joint.Count ? StateKind.Attached : StateKind.Slack, at);
            }
        }

        foreach (var fluid in machine.Fluids.Where(fluid => _state[new StateVariable(StateKind.Full, fluid.Index)] == 0))
        {
            yield return Item(fluid, "empty", StateKind.Full, at);
        }
    }

    private bool GoesBack(MachineItem item) => !_strip.Discarded.Contains(item);

    /// <summary>What holds a part that is off is off with it, and so is a cover of an open joint. An open plug or line is told all the same.</summary>
    private bool IsToldByAnother(Joint joint) => joint.Role switch
    {
        JointRole.Held => IsOnSomethingOff(joint),
        JointRole.Cover => IsOnSomethingOff(joint) || StateOf(joint.Over!).Length > 0,
        _ => false,
    };

    private bool IsOnSomethingOff(Joint joint) => IsCarriedOff(joint.Owner) || IsCarriedOff(joint.Other);

    private bool IsCarriedOff(Part? part) => part is not null && (IsOff(part) || IsCarriedOff(part.Parent));

    private bool IsOff(Part part) => !part.IsTemporary && GoesBack(part) && _state.Place(part) != PartPlace.Fitted;

    /// <summary>How a joint is; empty where it is whole.</summary>
    private string StateOf(Joint joint) => _state.Attached(joint) switch
    {
        0 => "open",
        var on when on < joint.Count => $"{on} of {joint.Count} on",
        _ when _state[new StateVariable(StateKind.Slack, joint.Index)] == 1 => "slack",
        _ => "",
    };

    /// <summary>The item, and the last step from there on that moves it: a proven job leaves it whole then.</summary>
    private PlanOpenItem Item(MachineItem item, string state, StateKind kind, int at)
    {
        var variable = new StateVariable(kind, item.Index);
        var closing = _actions.Skip(at).Last(action => action.Changes.Any(change => change.Variable == variable));
        return new PlanOpenItem(ItemWords.Whole(item), state, StepList.NumberOf(closing.Number));
    }
}
