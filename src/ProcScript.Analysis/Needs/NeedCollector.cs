using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Needs;

/// <summary>Gathers what an action needs in the state at hand, as the row of its verb and the author say.</summary>
/// <param name="facts">The machine.</param>
/// <param name="state">The state at hand; it may change between two calls.</param>
/// <param name="phase">Which of the conditions that bind one way bind now.</param>
/// <param name="discarded">What does not go back, so that nothing has to wait for it.</param>
internal sealed class NeedCollector(MachineFacts facts, MachineState state, NeedsPhase phase, IReadOnlySet<MachineItem> discarded)
{
    private readonly List<Need> _needs = [];

    /// <summary>
    /// What on the bench an action is spared, and has all the same: either will do, and the choice tells where the action may move to.
    /// Unless this is set, it has to stay on the bench.
    /// </summary>
    public bool AsInTheMachine { get; init; }

    /// <summary>Whether this is the strip: what comes off is in the machine still.</summary>
    public bool IsStrip => phase == NeedsPhase.Strip;

    /// <summary>The machine.</summary>
    public MachineFacts Facts => facts;

    /// <summary>The state at hand.</summary>
    public MachineState State => state;

    /// <summary>How many needs have been added so far.</summary>
    public int Count => _needs.Count;

    /// <summary>The needs of an action. The list is good until the next call.</summary>
    public List<Need> Collect(ActionRequest request)
    {
        _needs.Clear();
        if (request.Test is { } test)
        {
            TestNeeds.Add(test, this);
            return _needs;
        }

        foreach (var source in ActionTable.Row(request.Verb).Needs)
        {
            source(request, this);
        }

        Add(request.Conditions);
        return _needs;
    }

    /// <summary>What was collected last.</summary>
    public ImmutableArray<Need> Last => [.. _needs];

    /// <summary>Whether all that an action needs is met in the state at hand.</summary>
    public bool AllMet(ActionRequest request)
    {
        foreach (var need in Collect(request))
        {
            if (!IsMet(need))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether what one source asks for an action is met in the state at hand.</summary>
    public bool AllMetOf(ActionRequest request, Action<ActionRequest, NeedCollector> source)
    {
        _needs.Clear();
        source(request, this);
        return _needs.TrueForAll(IsMet);
    }

    /// <summary>The same for another state of the same machine.</summary>
    public NeedCollector On(MachineState other) => new(facts, other, phase, discarded) { AsInTheMachine = AsInTheMachine };

    /// <summary>The same state as one finds it who isolates an energy: what binds on the way out binds then, whenever it is done.</summary>
    public NeedCollector Isolating() => new(facts, state, NeedsPhase.Strip, discarded) { AsInTheMachine = AsInTheMachine };

    /// <summary>Whether a need is met in the state at hand.</summary>
    public bool IsMet(Need need) => need.IsMetBy(state[need.Variable]);

    /// <summary>Whether a condition binds in this phase.</summary>
    public bool Binds(Condition condition) => condition.Phase == NeedsPhase.Both || condition.Phase == phase;

    /// <summary>Whether an item does not go back.</summary>
    public bool IsDiscarded(MachineItem item) => discarded.Contains(item);

    /// <summary>Whether a joint does not go back, for itself or for an end of it.</summary>
    public bool IsGone(Joint joint) =>
        discarded.Count > 0 && (discarded.Contains(joint) || facts.Ends(joint).Any(discarded.Contains));

    /// <summary>Takes out again what was added from a place on and is not meant.</summary>
    public void Drop(int first, Predicate<Need> isNotMeant)
    {
        for (var i = _needs.Count - 1; i >= first; i--)
        {
            if (isNotMeant(_needs[i]))
            {
                _needs.RemoveAt(i);
            }
        }
    }

    /// <summary>Adds the needs of conditions that bind in this phase.</summary>
    public void Add(ImmutableArray<Condition> conditions)
    {
        foreach (var condition in conditions)
        {
            if (Binds(condition))
            {
                Add(condition);
            }
        }
    }

    /// <summary>Adds the need of a condition; of a temporary part that is to be fitted, that it bears a load as well.</summary>
    public void Add(Condition condition)
    {
        if (condition.State != NeededState.AnyOf || !AddOpenWay(condition, condition.Ways))
        {
            AddStated(ClearNeeds.NeedOf(condition, state));
        }
    }

    /// <summary>Adds the first of some ways of a choice that is open, with all that it asks for.</summary>
    /// <returns>Whether one is.</returns>
    public bool AddOpenWay(Condition choice, IEnumerable<Condition> ways) =>
        ways.Any(way => AddWhereMet(ClearNeeds.NeedOf(way, state) with { Declared = choice }));

    /// <summary>Adds the need that a condition states where it is met, and of a temporary part that bears a load all that this asks for.</summary>
    /// <returns>Whether it was added.</returns>
    private bool AddWhereMet(Need need)
    {
        var first = _needs.Count;
        AddStated(need);
        for (var i = first; i < _needs.Count; i++)
        {
            if (!IsMet(_needs[i]))
            {
                _needs.RemoveRange(first, _needs.Count - first);
                return false;
            }
        }

        return true;
    }

    /// <summary>Adds the need that a condition states.</summary>
    public void AddStated(Need need)
    {
        _needs.Add(need);
        if (need is PartFitted { Part.IsTemporary: true } fitted)
        {
            PartSources.Bearing(fitted, this);
        }
    }

    /// <summary>Adds a need.</summary>
    public void Add(Need need) => _needs.Add(need);

    /// <summary>Adds a need once.</summary>
    public void AddOnce(Need need)
    {
        if (!_needs.Contains(need))
        {
            _needs.Add(need);
        }
    }
}
