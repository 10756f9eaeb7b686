using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>
/// Finds the actions that make an action possible, such as taking a part out: off what holds it, away with what hides that, and so on down.
/// First what is needed is gathered depth first, each thing once, as if nothing needed could be lost again; then the actions are put in an order in which
/// none spoils what another needs, and tried on a copy of the machine.
/// </summary>
internal sealed class StripPlanner
{
    private readonly MachineFacts _facts;
    private readonly MachineState _state;
    private readonly NeedCollector _collector;
    private readonly List<PlannedAction> _gathered = [];
    private readonly HashSet<(Verb Verb, MachineItem? Target, int Position)> _begun = [];
    private readonly Stack<Frame> _open = [];

    private StripPlanner(MachineFacts facts, MachineState state, NeedCollector collector)
    {
        _facts = facts;
        _state = state;
        _collector = collector;
    }

    /// <summary>Plans to take out <paramref name="part"/>, which is not out.</summary>
    public static StripPlan Plan(MachineFacts facts, MachineState state, NeedCollector collector, Part part) =>
        Plan(facts, state, collector, new ActionRequest(Verb.Remove, part));

    /// <summary>Plans an action and all that it lacks; the action comes last.</summary>
    public static StripPlan Plan(MachineFacts facts, MachineState state, NeedCollector collector, ActionRequest goal)
    {
        var planner = new StripPlanner(facts, state, collector);
        return planner.Gather(goal) is { } obstacle
            ? new StripPlan([], obstacle)
            : planner.Arrange();
    }

    private StripObstacle? Gather(ActionRequest goal)
    {
        Begin(new PlannedAction(goal, null, null));
        while (_open.TryPeek(out var frame))
        {
            if (frame.Unmet.TryDequeue(out var need))
            {
                if (Meeting(need, frame.Action.Request) is not { } request)
                {
                    return new StripObstacle(need, Name(frame.Action));
                }

                Begin(new PlannedAction(request, need, Name(frame.Action)));
            }
            else
            {
                _gathered.Add(_open.Pop().Action);
            }
        }

        return null;
    }

    private void Begin(PlannedAction wanted)
    {
        var action = wanted with { Request = Verification.Prepared(wanted.Request, _collector) };
        var position = action.Request.Target is Control ? action.Request.Value : 0;
        if (_begun.Add((action.Request.Verb, action.Request.Target, position)))
        {
            _open.Push(new Frame(action, new Queue<Need>(_collector.Collect(action.Request).Where(need => !_collector.IsMet(need)))));
        }
    }

    /// <summary>The action that meets a need; null where nothing in a strip does.</summary>
    private ActionRequest? Meeting(Need need, ActionRequest by) => need switch
    {
        JointOff or CoverOff when need.Item is Joint joint && IsReached(FreeingKind.Off, joint) =>
            new ActionRequest(ActionTable.Opening(joint).Verb, joint, _state.Attached(joint)),
        PartFitted or PartInPlace when need.Item is Part { IsTemporary: true } && IsReached(FreeingKind.Fitted, need.Item) =>
            new ActionRequest(Verb.Fit, need.Item, (int)PartPlace.Fitted),
        JointComplete { Joint: { IsTemporary: true } joint } =>
            new ActionRequest(ActionTable.Closing(joint).Verb, joint, joint.Count - _state.Attached(joint)),
        JointTight { Joint.IsTemporary: true } => new ActionRequest(Verb.Tighten, need.Item),
        PartOutOfTheWay { Part: var part } when CanGoAside(part, by) => new ActionRequest(Verb.Aside, part),
        PartOutOfTheWay or PartOut when IsReached(FreeingKind.Out, need.Item) => new ActionRequest(Verb.Remove, need.Item),
        PartAside when IsReached(FreeingKind.Aside, need.Item) => new ActionRequest(Verb.Aside, need.Item),
        PartPropped { IsPropped: true } => new ActionRequest(Verb.Support, need.Item),
        EnergyProvedDead { Energy: var energy } when IsReached(FreeingKind.Switched, energy) => new ActionRequest(Verb.Verify, energy),
        EnergyIsolated or FluidEmpty when IsReached(FreeingKind.Switched, need.Item) =>
            new ActionRequest(ActionTable.Opening(need.Item).Verb, need.Item),
        ControlAt at when IsReached(FreeingKind.Switched, at.Control) => new ActionRequest(Verb.Set, at.Control, at.Position),
        _ => null,
    };

    private bool IsReached(FreeingKind kind, MachineItem item) => _facts.Freedom.Rank(new FreeingGoal(kind, item)) is not null;

    /// <summary>Whether a part may go aside for an action, and need not itself wait for that action.</summary>
    private bool CanGoAside(Part part, ActionRequest by) =>
        _facts.Freedom.Rank(new FreeingGoal(FreeingKind.Aside, part)) is { } aside && aside < (_facts.Freedom.Rank(Goal(by)) ?? int.MaxValue);

    private static FreeingGoal Goal(ActionRequest request) => request switch
    {
        { Verb: Verb.Aside } => new FreeingGoal(FreeingKind.Aside, request.Target!),
        { Verb: Verb.Fit, Target: Part part } => new FreeingGoal(FreeingKind.Fitted, part),
        { Target: Part part } => new FreeingGoal(FreeingKind.Out, part),
        { Target: Joint joint } => new FreeingGoal(FreeingKind.Off, joint),
        _ => new FreeingGoal(FreeingKind.Switched, request.Target!),
    };

    private StripPlan Arrange()
    {
        var trial = _state.Copy();
        var there = _collector.On(trial);
        var drafts = _gathered.ConvertAll(action => Draft(action, trial, there));
        var links = new CausalLinks(_facts.Layout, _state, drafts);
        if (new PrecedenceGraph(drafts.Count, links.Edges).LeastOrder() is not { } order)
        {
            return new StripPlan([], new StripObstacle(null, Name(_gathered[^1])));
        }

        return Try([.. order.Select(index => _gathered[index])]);
    }

    /// <summary>The action with its needs as they are now, and its change at its place among those gathered.</summary>
    private CausalStep Draft(PlannedAction action, MachineState trial, NeedCollector there) =>
        new([.. _collector.Collect(action.Request)], Perform(Verification.Prepared(action.Request, there), trial));

    private StripPlan Try(ImmutableArray<PlannedAction> actions)
    {
        var trial = _state.Copy();
        var collector = _collector.On(trial);
        foreach (var action in actions)
        {
            if (collector.Collect(action.Request).FirstOrDefault(need => !collector.IsMet(need)) is { } lacking)
            {
                return new StripPlan([], new StripObstacle(lacking, Name(action)));
            }

            Perform(Verification.Prepared(action.Request, collector), trial);
        }

        return new StripPlan(actions, null);
    }

    /// <returns>What it changes; nothing for work.</returns>
    private static ImmutableArray<StateChange> Perform(ActionRequest request, MachineState trial)
    {
        var changes = ActionEffect.On(trial, request);
        trial.Apply(changes);
        return changes;
    }

    private static NamedAction Name(PlannedAction action) => new(action.Request.Verb, action.Request.Target);

    /// <summary>An action whose needs are being gathered.</summary>
    private sealed record Frame(PlannedAction Action, Queue<Need> Unmet);
}
