using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Reaching;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Following;

/// <summary>
/// Finds the course from a machine that stands as no plan says. It looks for a strip that leads there by steps which may be done, one after the other;
/// what was closed over something open is opened again first. The refit of that strip is derived and proven like any other.
/// </summary>
internal sealed class Homeward
{
    /// <summary>How often something is opened again before it is given up.</summary>
    private const int MostRounds = 2_000;

    /// <summary>How often a step is put before others in turn, until it is plain that two wait for each other.</summary>
    private const int MostTurns = 8;

    private readonly JobCourse _course;
    private readonly MachineState _true;
    private readonly MachineState _state;
    private readonly NeedCollector _collector;
    private readonly bool _setsAgain;
    private readonly List<Opened> _waiting = [];
    private readonly List<Opened> _order = [];

    private Homeward(JobCourse course, MachineState machine, bool setsAgain)
    {
        (_course, _true, _state, _setsAgain) = (course, machine, course.Strip.Start.Copy(), setsAgain);
        _collector = new NeedCollector(course.Facts, _state, NeedsPhase.Strip, ImmutableHashSet<MachineItem>.Empty);
    }

    /// <summary>The course; null where none was found that is proven.</summary>
    /// <param name="course">The course that was left; its rules and its new parts hold on.</param>
    /// <param name="machine">How the machine stands.</param>
    public static JobCourse? Find(JobCourse course, MachineState machine) =>
        // What is opened again may need a control set; what is open already once needed it, and the control stands otherwise by now.
        new Homeward(course, machine, setsAgain: false).Find() ?? new Homeward(course, machine, setsAgain: true).Find();

    private JobCourse? Find()
    {
        Gather();
        if (!Sort())
        {
            return null;
        }

        ImmutableArray<Step> steps = [.. _order.Select(opened => opened.Step), .. Discards()];
        if (new HalfStripped(_course.Facts, _course.Strip, 0).Prove(steps) is not { } way)
        {
            return null;
        }

        var again = _order.Where(opened => opened.IsAgain).Select(opened => opened.Step).ToHashSet(ReferenceEqualityComparer.Instance);
        var home = _course.TakeUp(way, way.Strip.Actions.Where(action => Plans.Steps.StepOrigin.Step(action.Origin) is { } step && again.Contains(step) && !IsSo(action))
            .Select(action => Plans.Steps.StepList.NumberOf(action.Number)).ToHashSet());
        return LeadsHome(home) ? home : null;
    }

    /// <summary>Whether every step that is left may be done when its turn comes, from how the machine truly stands, and the machine is whole then.</summary>
    private bool LeadsHome(JobCourse home)
    {
        var machine = new TrueMachine(home, _true.Copy());
        foreach (var step in home.Steps.Where(step => !home.Done.Contains(step.Number)))
        {
            if (!machine.Missing(step).IsEmpty)
            {
                return false;
            }

            machine.Do(step);
        }

        return !machine.NotWhole().Any();
    }

    /// <summary>Whether the machine stands as an action leaves it: a cap may be on still although what it is on was closed too early.</summary>
    private bool IsSo(PerformedAction action) => action.Verb == Verb.Cap && action.Changes.All(change => _true[change.Variable] == change.After);

    /// <summary>What is open, as the steps that open it: those of the plan in its order, then others.</summary>
    private void Gather()
    {
        var left = _course.Strip.Start.Differences(_true).Where(variable => variable.Kind is not (StateKind.Capped or StateKind.Plugged))
            .ToDictionary(variable => variable, variable => Math.Abs(_true[variable] - _course.Strip.Start[variable]));
        foreach (var action in _course.Strip.Actions.Where(action => action.Origin is not InsertedCap && action.Changes is [_, ..]))
        {
            var change = action.Changes[0];
            if (left.GetValueOrDefault(change.Variable) is not (> 0 and var most) || !Leads(change))
            {
                continue;
            }

            var pieces = change.Variable.Kind == StateKind.Attached ? Math.Min(most, change.Before - change.After) : most;
            left[change.Variable] = most - pieces;
            var step = HalfStripped.Spelled(action);
            _waiting.Add(new Opened(change.Variable.Kind == StateKind.Attached ? step with { Count = pieces } : step, change.Variable, false));
        }

        foreach (var (variable, most) in left.Where(pair => pair.Value > 0).OrderBy(pair => pair.Key.Kind).ThenBy(pair => pair.Key.Index))
        {
            if (Opening(variable, most, _true[variable]) is { } step)
            {
                _waiting.Add(new Opened(step, variable, false));
            }
        }
    }

    /// <summary>Whether a change of the plan leads to where the machine stands, and not through it.</summary>
    private bool Leads(StateChange change) => change.Variable.Kind switch
    {
        StateKind.Attached => change.After < change.Before,
        StateKind.Place or StateKind.Position => _true[change.Variable] == change.After,
        StateKind.Live => change.After == _true[change.Variable] || _true[change.Variable] == (int)EnergyState.Dead,
        _ => true,
    };

    private Step? Opening(StateVariable variable, int pieces, int value)
    {
        var item = Machines.MachineItems.Of(_course.Machine, variable);
        return variable.Kind switch
        {
            StateKind.Attached => HalfStripped.Made(ActionTable.Opening(item).Verb, item) with { Count = pieces },
            StateKind.Slack => HalfStripped.Made(Verb.Loosen, item),
            StateKind.Place when item.IsTemporary => HalfStripped.Made(Verb.Fit, item),
            StateKind.Place => HalfStripped.Made(value == (int)PartPlace.Aside ? Verb.Aside : Verb.Remove, item),
            StateKind.Propped => HalfStripped.Made(Verb.Support, item),
            StateKind.Live => HalfStripped.Made(Verb.Isolate, item),
            StateKind.Full => HalfStripped.Made(Verb.Empty, item),
            StateKind.Position => HalfStripped.Made(Verb.Set, item) with { Position = value },
            _ => null,
        };
    }

    /// <summary>Puts the steps into an order in which each may be done when its turn comes, opening what is in the way.</summary>
    private bool Sort()
    {
        for (var round = 0; ; round++)
        {
            if (round > MostRounds)
            {
                return false;
            }

            _waiting.RemoveAll(IsReached);
            if (_waiting.Count == 0)
            {
                return true;
            }

            var next = _waiting.FindIndex(opened => (opened.After is null || !_waiting.Contains(opened.After)) && _collector.AllMet(Request(opened.Step)));
            if (next < 0)
            {
                if (!OpenWay())
                {
                    return false;
                }

                continue;
            }

            var (done, request) = (_waiting[next], Request(_waiting[next].Step));
            _waiting.RemoveAt(next);
            _order.Add(done);
            _state.Apply(ActionEffect.On(_state, request));
        }
    }

    /// <summary>Whether what a step is for has come about: something before it had to open more than is open.</summary>
    private bool IsReached(Opened opened) => opened.After is null && opened.Variable.Kind switch
    {
        StateKind.Attached => _state[opened.Variable] <= (opened.IsAgain ? 0 : _true[opened.Variable]),
        StateKind.Live => opened.Step.Verb == Verb.Isolate && _state[opened.Variable] != (int)EnergyState.Live,
        _ => false,
    };

    /// <summary>Has what keeps the first of the waiting steps from being done opened before it.</summary>
    private bool OpenWay()
    {
        var lacking = _collector.Collect(Request(_waiting[0].Step)).FirstOrDefault(need => !_collector.IsMet(need));
        if (lacking is AnyOf choice)
        {
            lacking = choice.Ways.FirstOrDefault(way => !_waiting.Exists(opened => opened.Variable == way.Variable)) ?? choice.Ways[0];
        }

        if (lacking is null)
        {
            return false;
        }

        var wanting = _waiting[0];
        if (_waiting.FindIndex(opened => opened.Variable == lacking.Variable) is > 0 and var later)
        {
            var moved = _waiting[later];
            if (moved.Moves++ < MostTurns)
            {
                // It waits already: its own turn comes first.
                _waiting.RemoveAt(later);
                _waiting.Insert(0, moved);
                return true;
            }

            // Each of two waits for the other. What stood aside before it came off was on its way there.
            return moved.Moves < 2 * MostTurns && Insert(Planned(lacking, moved.Step.Verb), lacking.Variable, isAgain: false);
        }

        if (Way(lacking) is not { } step)
        {
            return false;
        }

        if (lacking.Variable.Kind == StateKind.Position && !wanting.IsAgain && !_setsAgain)
        {
            // As it stands, the refit starts, and sets it where it needs to.
            _waiting.Insert(1, new Opened(Opening(lacking.Variable, 1, _state[lacking.Variable])!, default, false) { After = wanting });
            return Insert(step, lacking.Variable, isAgain: false);
        }

        return Insert(step, lacking.Variable, isAgain: true);
    }

    private bool Insert(Step? step, StateVariable variable, bool isAgain)
    {
        if (step is not null)
        {
            _waiting.Insert(0, new Opened(step, variable, isAgain));
        }

        return step is not null;
    }

    /// <summary>A step of the plan that meets a need by another verb; null where there is none.</summary>
    private Step? Planned(Need need, Verb other) =>
        _course.Strip.Actions.FirstOrDefault(action => action.Verb != other && action.Changes.Any(change => change.Variable == need.Variable && need.IsMetBy(change.After))) is { } planned
            ? HalfStripped.Spelled(planned)
            : need.Item is Part { Aside: not null } part && other != Verb.Aside && need.IsMetBy((int)PartPlace.Aside) ? HalfStripped.Made(Verb.Aside, part) : null;

    /// <summary>The step of the plan that meets a need, else the plainest there is; null where nothing does.</summary>
    private Step? Way(Need need)
    {
        var planned = _course.Strip.Actions.FirstOrDefault(action =>
            action.Origin is not InsertedCap && action.Changes.Any(change => change.Variable == need.Variable && need.IsMetBy(change.After)));
        return planned is not null ? HalfStripped.Spelled(planned)
            : need.Variable.Kind == StateKind.Position ? Opening(need.Variable, 1, need.Met)
            : Opening(need.Variable, need.Variable.Kind == StateKind.Attached ? _state[need.Variable] : 1, need.Variable.Kind == StateKind.Place ? (int)PlaceThatMeets(need) : 0);
    }

    private static PartPlace PlaceThatMeets(Need need) => need.Item is Part { Aside: not null } && need.IsMetBy((int)PartPlace.Aside) ? PartPlace.Aside : PartPlace.Out;

    /// <summary>What is open still of what the plan scraps or renews.</summary>
    private IEnumerable<Step> Discards() =>
        _course.Strip.Discards.Where(discard => discard.Need.IsMetBy(_state[discard.Need.Variable])).Select(discard => discard.Step);

    private ActionRequest Request(Step step) => Verification.Prepared(
        new ActionRequest(step.Verb, step.Target, step.Target switch
        {
            Joint => step.Count ?? 0,
            Control => step.Position,
            Part when step.Verb is Verb.Fit or Verb.Return => (int)PartPlace.Fitted,
            _ => 0,
        })
        {
            Conditions = step.Conditions,
        },
        _collector);

    /// <summary>A step that opens something.</summary>
    private sealed class Opened(Step step, StateVariable variable, bool isAgain)
    {
        public Step Step => step;

        public StateVariable Variable => variable;

        public bool IsAgain => isAgain;

        /// <summary>How often it was put before others.</summary>
        public int Moves { get; set; }

        /// <summary>The step that has to go before it, whatever it needs; null where none has.</summary>
        public Opened? After { get; init; }
    }
}
