using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Refitting;

/// <summary>
/// The refit before any rule moves it: the exact reverse with the checks at their places and, where an action needs a control at a
/// position that it never has, that control set before and back after. What the order must be is read off this sequence.
/// </summary>
internal sealed class ReferenceRefit
{
    private readonly MachineState _state;
    private readonly NeedCollector _collector;
    private readonly InverseList _inverses;
    private readonly VariableHistory _history;
    private readonly List<ActionDraft> _drafts = [];
    private readonly List<Leader> _leaders = [];
    private readonly Stack<SetBack> _toSetBack = [];
    private readonly HashSet<Control> _beingSet = [];

    private ReferenceRefit(MachineFacts facts, StripRun strip, InverseList inverses, bool asInTheMachine)
    {
        _inverses = inverses;
        _state = strip.End.Copy();
        _history = new VariableHistory(facts.Layout, strip.End, inverses.All);
        _collector = new NeedCollector(facts, _state, NeedsPhase.Refit, strip.Discarded) { AsInTheMachine = asInTheMachine };
    }

    /// <summary>The actions, in order.</summary>
    public List<ActionDraft> Drafts => _drafts;

    /// <summary>The actions that stand there for the sake of a later one, and should stay right before it.</summary>
    public List<Leader> Leaders => _leaders;

    /// <summary>Lays out the sequence.</summary>
    /// <param name="facts">The machine.</param>
    /// <param name="strip">The strip.</param>
    /// <param name="inverses">Its exact reverse.</param>
    /// <param name="asInTheMachine">Whether work on the bench may move into the machine, or else has to stay on the bench.</param>
    public static ReferenceRefit Of(MachineFacts facts, StripRun strip, InverseList inverses, bool asInTheMachine)
    {
        var refit = new ReferenceRefit(facts, strip, inverses, asInTheMachine);
        var placed = strip.Procedure.Rules.OfType<PlacedRule>().ToLookup(refit.Slot);
        for (var slot = 0; slot < inverses.All.Length; slot++)
        {
            var checks = refit._drafts.Count;
            refit.AddPlaced(placed[slot]);
            var after = refit._drafts.Count;
            var inverse = inverses.All[slot];
            refit.Add(inverse.Request, inverse.Origin, inverse.Undoes);
            if (inverse.Origin is PropAgain || inverse.Request.Verb == Verb.Uncap)
            {
                // The prop stands ready when the part goes in, and an opening is bare when it is closed; not long before.
                refit._leaders.Add(new Leader(refit._drafts.Count - 1, refit._drafts.Count));
            }

            for (var i = checks; i < after; i++)
            {
                if (refit._drafts[i].Origin is RuledCheck { Rule.Before: not null } or RuledTest { Rule.Before: not null } or Retorqued { Rule.Before: not null })
                {
                    refit._leaders.Add(new Leader(i, refit._drafts.Count - 1));
                }
            }
        }

        refit.AddPlaced(placed[inverses.All.Length]);
        refit.SetBackUnless([]);
        return refit;
    }

    private void AddPlaced(IEnumerable<PlacedRule> rules)
    {
        foreach (var rule in rules)
        {
            Add(Request(rule), Origin(rule), null);
        }
    }

    private static ActionRequest Request(PlacedRule rule) => rule switch
    {
        TestRule test => new ActionRequest(Verb.Check, null) { Test = test },
        RetorqueRule retorque => new ActionRequest(Verb.Retorque, retorque.Target.Target) { Conditions = retorque.Conditions },
        _ => new ActionRequest(((CheckRule)rule).Verb, null) { Conditions = ((CheckRule)rule).Conditions },
    };

    private static ActionOrigin Origin(PlacedRule rule) => rule switch
    {
        TestRule test => new RuledTest(test),
        RetorqueRule retorque => new Retorqued(retorque),
        _ => new RuledCheck((CheckRule)rule),
    };

    /// <summary>The place of a check or a test: the index of the inverse that it stands before.</summary>
    private int Slot(PlacedRule rule)
    {
        if (rule.Before is { } before && _inverses.PlaceOf(before) is { } next)
        {
            return next.First;
        }

        if (rule.After is { } after && _inverses.PlaceOf(after) is { } last)
        {
            return last.Last + 1;
        }

        // Close-out; a test right before its energies come back for good, since it goes before that and nothing else asks for it.
        var slot = _inverses.All.Length;
        if (rule is TestRule)
        {
            return slot;
        }

        if (rule is RetorqueRule)
        {
            return LastChance(Request(rule));
        }

        // A check as late as its needs hold, by whichever way of a choice that is latest.
        foreach (var condition in ((CheckRule)rule).Conditions)
        {
            if (_collector.Binds(condition))
            {
                slot = Math.Min(slot, condition.Each.Max(way => LastSlot(way) ?? slot));
            }
        }

        return slot;
    }

    /// <summary>The index of the inverse that ends what a condition asks for; null where nothing does.</summary>
    private int? LastSlot(Condition condition)
    {
        var last = _history.Find(ClearNeeds.NeedOf(condition, _state), _inverses.All.Length);
        return last is null ? null : last.Value.End;
    }

    /// <summary>The last place along the exact reverse at which all that an action needs is so; the end where there is none.</summary>
    private int LastChance(ActionRequest request)
    {
        var state = _state.Copy();
        var collector = _collector.On(state);
        var last = _inverses.All.Length;
        for (var slot = 0; slot <= _inverses.All.Length; slot++)
        {
            if (collector.AllMet(request))
            {
                last = slot;
            }

            if (slot < _inverses.All.Length)
            {
                state.Apply(_inverses.All[slot].Changes);
            }
        }

        return last;
    }

    private void Add(ActionRequest request, ActionOrigin origin, PerformedAction? undoes)
    {
        if (_toSetBack.Count > 0 && request.Verb is not (Verb.Record or Verb.Pause))
        {
            SetBackUnless(_collector.Collect(request).OfType<ControlAt>());
        }

        var first = _drafts.Count;
        if (!_collector.AllMet(request))
        {
            foreach (var need in _collector.Last.Select(Settable).OfType<ControlAt>())
            {
                Set(need, new NamedAction(request.Verb, request.Target), undoes);
            }

            _leaders.AddRange(Enumerable.Range(first, _drafts.Count - first).Select(index => new Leader(index, _drafts.Count)));
            _collector.Collect(request);
        }

        Append(request, origin, _collector.Last);
    }

    /// <summary>The position that a need wants of a control and never gets unless it is set for it; null where it is another need.</summary>
    private ControlAt? Settable(Need need) => need switch
    {
        ControlAt at => HasToBeSet(at) ? at : null,
        AnyOf choice when _history.Find(choice, _inverses.All.Length) is null => choice.Ways.OfType<ControlAt>().FirstOrDefault(HasToBeSet),
        _ => null,
    };

    private bool HasToBeSet(ControlAt need) =>
        !_collector.IsMet(need)
        && !_beingSet.Contains(need.Control)
        && _history.Find(need, _inverses.All.Length) is null;

    private void Set(ControlAt need, NamedAction of, PerformedAction? undoes)
    {
        _beingSet.Add(need.Control);
        var back = new SetBack(need, _state[need.Variable], of, undoes);
        Add(new ActionRequest(Verb.Set, need.Control, need.Position), new InsertedSet(need, of, undoes), undoes);
        _beingSet.Remove(need.Control);
        _toSetBack.Push(back);
    }

    /// <summary>Sets back, the last first, what the next action does not need as it is.</summary>
    private void SetBackUnless(IEnumerable<ControlAt> needed)
    {
        var still = needed.Select(need => (need.Control, need.Position)).ToHashSet();
        while (_beingSet.Count == 0
            && _toSetBack.TryPeek(out var back)
            && !still.Contains((back.Need.Control, back.Need.Position)))
        {
            _toSetBack.Pop();
            var request = new ActionRequest(Verb.Set, back.Need.Control, back.Position);
            Append(request, new InsertedSet(back.Need, back.Of, back.Undoes), [.. _collector.Collect(request)]);
        }
    }

    private void Append(ActionRequest request, ActionOrigin origin, ImmutableArray<Need> needs)
    {
        var changes = ActionEffect.On(_state, request);
        _state.Apply(changes);
        _drafts.Add(new ActionDraft(request, origin, needs, changes));
    }

    private sealed record SetBack(ControlAt Need, int Position, NamedAction Of, PerformedAction? Undoes);
}

/// <summary>An action that stands there for the sake of a later one.</summary>
/// <param name="Index">The index of the action.</param>
/// <param name="Led">The index of the later one.</param>
internal readonly record struct Leader(int Index, int Led);
