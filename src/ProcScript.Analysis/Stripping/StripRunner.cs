using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Reading;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Stripping;

/// <summary>
/// Performs the stages and the work of a procedure, step by step. After a need that is not met the run goes on as if it had been:
/// what was assumed is remembered, and what would only repeat it stays quiet.
/// </summary>
internal sealed class StripRunner
{
    private readonly SeenLibrary _library;
    private readonly MachineFacts _facts;
    private readonly Procedure _procedure;
    private readonly MachineState _state;
    private readonly NeedCollector _collector;
    private readonly FailureSorting _sorting;
    private readonly HashSet<StateVariable> _assumed = [];
    private readonly Step?[] _lastStep;
    private readonly List<ActionDraft> _drafts = [];
    private readonly List<StripFailure> _failures = [];
    private readonly DiscardedItems _discarded;
    private readonly RenewedItems _renewed = new();
    private readonly StepSupply? _supply;
    private readonly Capping _capping;
    private readonly Dictionary<Energy, NeverProved> _unproved = [];
    private readonly NeededSteps _needed;
    private readonly bool _leavesOut;
    private bool _isSound = true;

    private StripRunner(SeenLibrary library, MachineFacts facts, Procedure procedure, StepSupply? supply)
    {
        _supply = supply;
        _capping = Capping.Of(facts, procedure);
        _library = library;
        _facts = facts;
        _procedure = procedure;
        _state = MachineState.Whole(facts.Layout);
        _discarded = new DiscardedItems();
        _collector = new NeedCollector(facts, _state, NeedsPhase.Strip, _discarded.Items);
        _lastStep = new Step?[facts.Layout.Size];
        _sorting = new FailureSorting(_state, LastStep);
        // Many runs of one procedure are tried; what is done is only kept for those that ask for it.
        _leavesOut = procedure.Stages.Any(stage => stage.Steps.Any(step => step.WhereNeeded is not null)) || procedure.Work.Any(step => step.WhereNeeded is not null);
        _needed = new NeededSteps(facts.Layout, _state, _renewed.Whole, _discarded.Items);
    }

    /// <summary>Performs a procedure.</summary>
    /// <param name="library">Its library.</param>
    /// <param name="facts">Its machine.</param>
    /// <param name="procedure">The procedure.</param>
    /// <param name="supply">Takes note of what steps lack, which is then performed before them; null to perform what is written alone.</param>
    public static StripRun Run(SeenLibrary library, MachineFacts facts, Procedure procedure, StepSupply? supply = null) =>
        new StripRunner(library, facts, procedure, supply).Run();

    private StripRun Run()
    {
        var start = _state.Copy();
        var ends = new List<int>();
        foreach (var stage in _procedure.Stages)
        {
            _needed.Stage = ends.Count;
            Perform(stage.Steps);
            ends.Add(_drafts.Count);
        }

        _needed.Stage = -1;
        Perform(_procedure.Work);
        _failures.AddRange(_unproved.Values.Where(never => !_failures.Exists(failure => failure is NotProved other && other.Energy == never.Energy)));
        var numbering = Number(start);
        var (actions, order) = numbering.End();
        return new StripRun(_facts, _library)
        {
            Procedure = _procedure,
            Actions = actions,
            Stages = [.. _procedure.Stages.Select((stage, i) => new StageRun(stage, actions[(i == 0 ? 0 : ends[i - 1])..ends[i]]))],
            Work = actions[(ends.Count == 0 ? 0 : ends[^1])..],
            Order = order,
            Discards = _discarded.Discards,
            Discarded = _discarded.Items,
            Replaced = _renewed.Whole,
            Renewed = _renewed.Pieces,
            Failures = RepeatedCalls.Join(_failures, _procedure),
            Skipped = _needed.Skipped,
            MissedGoals = GoalCheck.Missed(_procedure, actions, _failures),
            IsSound = _isSound && _failures.Count == 0,
            Start = start,
            End = _state,
            Numbering = numbering,
        };
    }

    private RunNumbering Number(MachineState start)
    {
        var links = new CausalLinks(_facts.Layout, start, _drafts);
        var before = new NumberedGroups<OrderEdge>(_drafts.Count, links.Edges, edge => edge.Later);
        var numbering = new RunNumbering(_drafts.Count, links.Edges.Count);
        for (var i = 0; i < _drafts.Count; i++)
        {
            numbering.Add(_drafts[i], links.Met(i), before[i]);
        }

        return numbering;
    }

    /// <summary>The step that last changed a variable; null where none did.</summary>
    private Step? LastStep(StateVariable variable) => _lastStep[_facts.Layout.Slot(variable)];

    private void Perform(ImmutableArray<Step> steps)
    {
        foreach (var step in steps)
        {
            Perform(step);
        }
    }

    private void Perform(Step step)
    {
        var row = ActionTable.Row(step.Verb);
        if (step.Target is { } item && !Fits(step, row, item))
        {
            return;
        }

        if (step.WhereNeeded is not null && _needed.LeavesOut(step, _drafts))
        {
            // What the step wants looked at once it is done is looked at all the same.
            _needed.ChecksOf(step, _drafts).ForEach(Perform);
            return;
        }

        switch (step)
        {
            case { Verb: Verb.Strip, Target: Part part }:
                Expand(step, part);
                break;
            case { Verb: Verb.Discard, Target: { } target }:
                Supply(step, new ActionRequest(Verb.Discard, target));
                if (Meets(step, new ActionRequest(Verb.Discard, target)))
                {
                    _discarded.Add(new Discard(target, step.Text ?? "", step) { After = _drafts.Count });
                }

                break;
            default:
                Perform(step, Request(step), new WrittenStep(step), step.InBackground && row.MayRunInBackground);
                break;
        }

        if (step is { Verb: Verb.Replace, Target: not null })
        {
            _renewed.Add(step);
        }
    }

    /// <summary>Whether the verb suits the target at all; where it does not, what the author meant is assumed.</summary>
    private bool Fits(Step step, ActionRow row, MachineItem target)
    {
        StripFailure? failure = step switch
        {
            _ when row.Phase == ActionPhase.Refit && !target.IsTemporary => new VerbOfTheRefit(step, target),
            _ when !row.Suits(target) => new VerbDoesNotFit(step, target),
            { Verb: Verb.Aside, Target: Part { Aside: null } part } => new NoWayAside(step, part),
            { InBackground: true } when !row.MayRunInBackground => new NotInBackground(step),
            _ => _renewed.Lacking(step, _state),
        };
        if (failure is null)
        {
            return true;
        }

        Fail(failure);
        if (failure is VerbDoesNotFit && row.Phase == ActionPhase.Strip)
        {
            Assume(target);
        }
        else if (failure is NoWayAside { Part: var part })
        {
            Assume(new PartOutOfTheWay(part));
        }

        return failure is NotInBackground;
    }

    private ActionRequest Request(Step step)
    {
        var value = step.Target switch
        {
            Joint when step.Verb == Verb.Replace => step.Count ?? 0,
            Joint joint => step.WhereNeeded is null ? step.Count ?? There(step.Verb, joint) : _needed.Left(step, joint),
            Control => step.Position,
            _ => 0,
        };
        return new ActionRequest(step.Verb, step.Target, value) { Conditions = step.Conditions };
    }

    /// <summary>How many pieces of a joint there are for a verb: those that are off where it closes, else those that are on.</summary>
    private int There(Verb verb, Joint joint) =>
        ActionTable.Closing(joint).Verb == verb ? joint.Count - _state.Attached(joint) : _state.Attached(joint);

    private void Expand(Step step, Part part)
    {
        if (_assumed.Contains(new PartOut(part).Variable))
        {
            Assume(part);
            return;
        }

        if (_state.Place(part) == PartPlace.Out)
        {
            if (_supply?.ComesInsteadOf(step, new ActionRequest(Verb.Remove, part), new PartOut(part).Variable) == true)
            {
                return;
            }

            Fail(new AlreadyDone(step, part, LastStep(new PartOut(part).Variable)));
            return;
        }

        var plan = StripPlanner.Plan(_facts, _state, _collector, part);
        if (plan.Obstacle is { } obstacle)
        {
            if (_facts.Freedom.IsStuck(new PartOut(part)) || (obstacle.Lacking is { } lacking && _assumed.Contains(lacking.Variable)))
            {
                _isSound = false;
            }
            else
            {
                Fail(new NoWayOut(step, part, obstacle.Lacking, obstacle.Of));
            }

            Assume(part);
            return;
        }

        var given = _library.Given(_procedure);
        foreach (var planned in plan.Actions)
        {
            var origin = new ExpandedStep(step, planned.For, planned.Of)
            {
                Given = given.Of(_procedure.Machine, planned.Request.Verb, planned.Request.Target!),
            };
            Perform(step, planned.Request, origin, inBackground: false);
        }
    }

    /// <summary>Performs what a step lacks, where that is asked for and there is a way.</summary>
    private void Supply(Step step, ActionRequest request)
    {
        if (_supply?.Covers(step) != true || _collector.AllMet(request))
        {
            return;
        }

        var plan = StripPlanner.Plan(_facts, _state, _collector, request);
        if (plan.Obstacle is not null)
        {
            return;
        }

        foreach (var planned in plan.Actions[..^1])
        {
            _supply.Add(step, planned.Request);
            Perform(step, planned.Request, new ExpandedStep(step, planned.For, planned.Of), inBackground: false);
        }
    }

    private void Perform(Step step, ActionRequest request, ActionOrigin origin, bool inBackground)
    {
        if (origin is WrittenStep)
        {
            Supply(step, request);
        }

        request = Verification.Prepared(request, _collector);
        if (!Meets(step, request))
        {
            return;
        }

        // What is done to fewer pieces than asked is done to those that are there.
        var possible = request.Target is Joint joint && ActionTable.Row(request.Verb) is { Phase: not ActionPhase.Work, IsInserted: false }
            ? request with { Value = Math.Min(request.Value, There(request.Verb, joint)) }
            : request;
        var needs = _isSound ? _collector.Last : [.. _collector.Collect(possible)];
        Prove(step, possible);
        var changes = ActionEffect.On(_state, possible);
        _state.Apply(changes);
        foreach (var change in changes)
        {
            _lastStep[_facts.Layout.Slot(change.Variable)] = step;
            _assumed.Remove(change.Variable);
        }

        _drafts.Add(new ActionDraft(possible, origin, needs, changes) { InBackground = inBackground });
        if (_leavesOut)
        {
            _needed.Note(_drafts[^1], _drafts.Count - 1);
        }

        if (_capping.After(possible) is { } cap)
        {
            Perform(step, cap, new InsertedCap(step), inBackground: false);
        }
    }

    /// <summary>Notes an isolation that nobody can prove where it stands, and forgets it where a later step does.</summary>
    private void Prove(Step step, ActionRequest request)
    {
        if (request is { Verb: Verb.Isolate, Target: Energy isolated, Value: (int)EnergyState.Unproved })
        {
            _unproved[isolated] = new NeverProved(step, isolated, OutOfReach(isolated));
        }
        else if (request is { Verb: Verb.Verify, Target: Energy proved })
        {
            _unproved.Remove(proved);
        }
    }

    private NotProved WithReasons(NotProved early) => early with
    {
        LackedThen = _unproved.TryGetValue(early.Energy, out var never) ? never.Lacking : [],
        LackingNow = OutOfReach(early.Energy),
    };

    /// <summary>What keeps people from the place where an energy is proved to be off.</summary>
    private ImmutableArray<Need> OutOfReach(Energy energy)
    {
        var there = _collector.On(_state);
        there.AllMetOf(new ActionRequest(Verb.Verify, energy), Verification.Reached);
        return [.. there.Last.Where(need => !there.IsMet(need))];
    }

    /// <summary>Judges the needs of an action and assumes those that are not met. False where there is nothing to do.</summary>
    private bool Meets(Step step, ActionRequest request) => _collector.AllMet(request) || GoesOn(step, request);

    /// <summary>Judges the needs that were collected last, of which some are not met.</summary>
    private bool GoesOn(Step step, ActionRequest request)
    {
        var unmet = _collector.Last.Where(need => !_collector.IsMet(need)).ToList();
        if (unmet.Exists(need => FailureSorting.IsOwn(need, request) && _supply?.ComesInsteadOf(step, request, need.Variable) == true))
        {
            return false;
        }

        _isSound = false;
        unmet = unmet.ConvertAll(need => need is AnyOf choice ? WithQuickest(choice, request) : need);
        var told = unmet.Where(need => !_assumed.Contains(need.Variable) && !_facts.Freedom.IsStuck(need));
        _failures.AddRange(_sorting.Sort(step, request, [.. told]).Select(failure => failure is NotProved early ? WithReasons(early) : failure));
        if (unmet.FirstOrDefault(need => FailureSorting.IsOwn(need, request)) is { } own)
        {
            return (own is PartOut or JointOff or JointMissing && ActionTable.Row(request.Verb).Phase == ActionPhase.Work) || (own is JointAttached { Joint: var joint } && _state.Attached(joint) > 0);
        }

        unmet.ForEach(Assume);
        return true;
    }

    private AnyOf WithQuickest(AnyOf choice, ActionRequest by) =>
        choice with { Quickest = StripPlanner.Quickest(_facts, _state, _collector.On(_state), choice, by) };

    private void Fail(StripFailure failure)
    {
        _failures.Add(failure);
        _isSound = false;
    }

    private void Assume(Need need)
    {
        if (need is AnyOf choice)
        {
            need = choice.Quickest ?? choice.Ways[0];
        }

        _state[need.Variable] = need.Met;
        _assumed.Add(need.Variable);
    }

    /// <summary>Goes on as if the item had been opened, moved or switched.</summary>
    private void Assume(MachineItem item)
    {
        Need? need = item switch
        {
            Joint joint => new JointOff(joint),
            Part part => new PartOut(part),
            Energy energy => new EnergyIsolated(energy),
            Fluid fluid => new FluidEmpty(fluid),
            _ => null,
        };
        if (need is not null)
        {
            Assume(need);
        }
    }
}
