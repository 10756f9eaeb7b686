using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>
/// Finds the actions that make an action possible, such as taking a part out: off what holds it, away with what hides that, and so on down.
/// First what is needed is gathered depth first, each thing once, as if nothing needed could be lost again, and after that the quickest way of each
/// choice; then the actions are put in an order in which none spoils what another needs, and tried on a copy of the machine.
/// </summary>
internal sealed class StripPlanner
{
    private readonly MachineFacts _facts;
    private readonly MachineState _state;
    private readonly NeedCollector _collector;
    private readonly List<PlannedAction> _gathered = [];
    private readonly HashSet<PlanKey> _begun = [];
    private readonly Stack<Frame> _open = [];
    private readonly WayChoice _choice;

    /// <summary>The choices that are still to be made, each with the action that has it.</summary>
    private readonly List<(AnyOf Choice, PlannedAction By)> _pending = [];

    private StripPlanner(MachineFacts facts, MachineState state, NeedCollector collector, WayChoice choice)
    {
        _facts = facts;
        _state = state;
        _collector = collector;
        _choice = choice;
    }

    /// <summary>Plans to take out <paramref name="part"/>, which is not out.</summary>
    public static StripPlan Plan(MachineFacts facts, MachineState state, NeedCollector collector, Part part) =>
        Plan(facts, state, collector, new ActionRequest(Verb.Remove, part));

    /// <summary>Plans an action and all that it lacks; the action comes last.</summary>
    public static StripPlan Plan(MachineFacts facts, MachineState state, NeedCollector collector, ActionRequest goal)
    {
        var choice = new WayChoice();
        var first = new StripPlanner(facts, state, collector, choice).Plan(goal);
        var plan = first;
        while (plan.Obstacle is not null && choice.RuleOutTheLast())
        {
            plan = new StripPlanner(facts, state, collector, choice).Plan(goal);
        }

        return plan.Obstacle is null ? plan : first;
    }

    /// <summary>The way of a choice that takes least time; null where nothing opens one.</summary>
    public static Need? Quickest(MachineFacts facts, MachineState state, NeedCollector collector, AnyOf choice, ActionRequest by) =>
        new StripPlanner(facts, state, collector, new WayChoice()).Quickest(choice, by);

    private StripPlan Plan(ActionRequest goal) => Gather(new PlannedAction(goal, null, null)) is { } obstacle
        ? new StripPlan([], obstacle)
        : Arrange();

    private StripObstacle? Gather(PlannedAction goal)
    {
        Begin(goal, null);
        var obstacle = GatherOpen();
        while (obstacle is null && _pending.Count > 0)
        {
            // In an order that the declarations have no part in.
            var next = _pending.MinBy(one => (one.By.Request.Target?.Name ?? "", one.By.Request.Verb, one.Choice.Item.Name))!;
            _pending.Remove(next);
            obstacle = Open(next.Choice, next.By) ?? GatherOpen();
        }

        return obstacle;
    }

    /// <summary>Gathers what the open actions need, but for choices.</summary>
    private StripObstacle? GatherOpen()
    {
        while (_open.TryPeek(out var frame))
        {
            if (!frame.Unmet.TryDequeue(out var need))
            {
                _gathered.Add(_open.Pop().Action);
            }
            else if (need is AnyOf choice)
            {
                _pending.Add((choice, frame.Action));
            }
            else if (Open(need, frame.Action) is { } obstacle)
            {
                return obstacle;
            }
        }

        return null;
    }

    /// <summary>Begins the action that meets a need, of a choice that of its quickest way; the obstacle where there is none.</summary>
    private StripObstacle? Open(Need wanted, PlannedAction by)
    {
        if (wanted is AnyOf open && IsOpened(open, by.Request))
        {
            return null;
        }

        var need = wanted is AnyOf choice ? Quickest(choice, by.Request) : wanted;
        if (need is null || Meeting(need, by.Request) is not { } request)
        {
            return new StripObstacle(wanted, Name(by));
        }

        Begin(new PlannedAction(request, need, Name(by)), by.Request);
        return null;
    }

    /// <summary>Whether what is gathered opens a way of a choice already, and does not wait for what has the choice.</summary>
    private bool IsOpened(AnyOf choice, ActionRequest by)
    {
        var waiting = _choice.WaitingFor(PlanKey.Of(by));
        var opening = _gathered.FirstOrDefault(action => !waiting.Contains(PlanKey.Of(action.Request))
            && ActionEffect.On(_state, action.Request).Any(change => choice.Ways.Any(way => way.Variable == change.Variable && way.IsMetBy(change.After))));
        if (opening is null)
        {
            return false;
        }

        _choice.Link(PlanKey.Of(by), PlanKey.Of(opening.Request));
        return true;
    }

    private void Begin(PlannedAction wanted, ActionRequest? by)
    {
        var action = wanted with { Request = Verification.Prepared(wanted.Request, _collector) };
        var key = PlanKey.Of(action.Request);
        if (_facts.HasChoices && by is { } parent)
        {
            _choice.Link(PlanKey.Of(parent), key);
        }

        if (_begun.Add(key))
        {
            _open.Push(new Frame(action, new Queue<Need>(_collector.Collect(action.Request).Where(need => !_collector.IsMet(need)))));
        }
        else if (Trial is { } trial)
        {
            trial.IsCircular |= trial.Waiting.Contains(key) || _open.Any(frame => PlanKey.Of(frame.Action.Request) == key);
        }
    }

    /// <summary>Where only the time of a way is asked for: what waits for it. Else null.</summary>
    private TrialOfWay? Trial { get; init; }

    /// <summary>The way of a choice that takes least time beside what is planned already; of equals the first.</summary>
    private Need? Quickest(AnyOf choice, ActionRequest by)
    {
        (Need? Way, double Seconds) best = (null, double.PositiveInfinity);
        var waiting = _choice.WaitingFor(PlanKey.Of(by));
        waiting.UnionWith(Trial?.Waiting ?? []);
        foreach (var way in choice.Ways)
        {
            if (!_choice.IsRuledOut(way) && Meeting(way, by) is { } request && Seconds(request, by, waiting) is { } seconds && seconds < best.Seconds)
            {
                best = (way, seconds);
            }
        }

        if (best.Way is { } chosen && Trial is null)
        {
            _choice.Note(chosen);
        }

        return best.Way;
    }

    /// <summary>How long an action takes with all that it lacks beside what is planned already; null where there is no way to it.</summary>
    private double? Seconds(ActionRequest request, ActionRequest by, HashSet<PlanKey> waiting)
    {
        var key = PlanKey.Of(Verification.Prepared(request, _collector));
        if (_begun.Contains(key))
        {
            return waiting.Contains(key) ? null : 0;
        }

        if (!_choice.MayTry())
        {
            return double.MaxValue;
        }

        var trial = new StripPlanner(_facts, _state, _collector, _choice.Copy()) { Trial = new TrialOfWay(waiting) };
        trial._begun.UnionWith(_begun);
        trial._choice.Link(PlanKey.Of(by), key);
        return trial.Gather(new PlannedAction(request, null, null)) is null && !trial.Trial.IsCircular
            ? trial._gathered.Sum(action => StepTime.Of(action.Request, _state).Duration)
            : null;
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
        if (new PrecedenceGraph(drafts.Count, links.Edges).LeastOrder() is not { } least)
        {
            return new StripPlan([], new StripObstacle(null, Name(_gathered.Find(action => action.For is null)!)));
        }

        // What could as well come after the goal is not needed.
        List<int> order = [.. least];
        var goal = order.IndexOf(_gathered.FindIndex(action => action.For is null));
        return Try([.. order.Take(goal + 1).Select(index => _gathered[index])]);
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

    /// <summary>A plan that is made for its time alone.</summary>
    /// <param name="waiting">What waits for it, so that it must not need any of that.</param>
    private sealed class TrialOfWay(HashSet<PlanKey> waiting)
    {
        /// <summary>What waits for it.</summary>
        public HashSet<PlanKey> Waiting => waiting;

        /// <summary>Whether it needs something that waits for it.</summary>
        public bool IsCircular { get; set; }
    }
}
