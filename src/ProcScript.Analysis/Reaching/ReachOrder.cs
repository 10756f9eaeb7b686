using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Reaching.Search;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Reaching;

/// <summary>
/// Puts what is brought about into an order: what makes safe first, then each thing right before what needs it, and nothing before what it would spoil.
/// It performs each action on a copy of the machine, so that what comes out can be worked.
/// </summary>
internal sealed class ReachOrder
{
    /// <summary>How often a control may be set that nobody asked for, to let what is stuck go on.</summary>
    private const int MostSets = 20;

    private readonly MachineState _state;
    private readonly NeedCollector _collector;
    private readonly List<ActionRequest> _done = [];
    private readonly LinkedList<ActionRequest> _pending;
    private readonly HashSet<ActionRequest> _left;
    private readonly HashSet<ActionRequest> _first;
    private readonly Dictionary<StateVariable, HashSet<ActionRequest>> _readers = [];
    private int _sets;

    private ReachOrder(MachineFacts facts, List<ActionRequest> actions, HashSet<ActionRequest> first)
    {
        _first = first;
        _state = MachineState.Whole(facts.Layout);
        _collector = new NeedCollector(facts, _state, NeedsPhase.Strip, ImmutableHashSet<MachineItem>.Empty);
        _pending = new LinkedList<ActionRequest>(actions);
        _left = [.. _pending];
        foreach (var action in _pending)
        {
            foreach (var need in _collector.Collect(action))
            {
                Reads(action, need);
            }
        }
    }

    /// <summary>The actions of a closure in an order in which they can be done; null where none was found.</summary>
    /// <param name="facts">The machine.</param>
    /// <param name="graph">What the nodes stand for.</param>
    /// <param name="costs">What brings them about.</param>
    /// <param name="problem">The problem.</param>
    /// <param name="closure">The nodes.</param>
    public static List<ActionRequest>? Of(MachineFacts facts, ReachGraph graph, ReachCosts costs, ClosureProblem problem, int[] closure)
    {
        var (nodes, first) = Sorted(graph, problem, closure);
        return new ReachOrder(facts, [.. nodes.SelectMany(Actions)], [.. nodes.Take(first).SelectMany(Actions)]).Run();

        IEnumerable<ActionRequest> Actions(int node) => ReachOrder.Actions(graph, costs, node);
    }

    /// <summary>The actions of the strip that bring a node about.</summary>
    public static IEnumerable<ActionRequest> Actions(ReachGraph graph, ReachCosts costs, int node) => costs.Requests(graph[node])
        .Select(request => graph[node].Kind == FreeingKind.ProvedAtOnce ? request with { Value = (int)EnergyState.Dead } : request)
        .Where(action => ActionTable.Row(action.Verb).Phase != ActionPhase.Work);

    /// <summary>Actions in an order in which they can be done, as close to the given one as that lets; null where none was found.</summary>
    /// <param name="facts">The machine.</param>
    /// <param name="actions">The actions, each once.</param>
    /// <param name="first">Those of them that go first where they can.</param>
    public static List<ActionRequest>? Of(MachineFacts facts, List<ActionRequest> actions, HashSet<ActionRequest> first) =>
        new ReachOrder(facts, actions, first).Run();

    /// <summary>The nodes, each after what serves it: energies and fluids with all that these need before all else, and how many these are.</summary>
    private static (List<int> Nodes, int First) Sorted(ReachGraph graph, ClosureProblem problem, int[] closure)
    {
        var chosen = closure.ToHashSet();
        var rounds = problem.Rounds(chosen.Contains);
        var sorted = new List<int>();
        var begun = new HashSet<int>();
        var safe = closure.Where(node => IsPrecaution(graph[node])).OrderBy(node => graph[node] is { Item: Fluid } ? 1 : 0).ToList();
        foreach (var root in safe)
        {
            Gather(root);
        }

        var first = sorted.Count;
        foreach (var root in problem.Goals.Concat(closure.OrderBy(node => rounds[node])))
        {
            Gather(root);
        }

        return (sorted, first);

        void Gather(int root)
        {
            var open = new Stack<(int Node, int Next)>();
            Begin(root);
            while (open.TryPop(out var at))
            {
                if (at.Next == problem.Clauses[at.Node].Length)
                {
                    sorted.Add(at.Node);
                    continue;
                }

                open.Push((at.Node, at.Next + 1));
                Begin(problem.Clauses[at.Node][at.Next].Where(chosen.Contains).MinBy(way => (rounds[way], way)));
            }

            void Begin(int node)
            {
                if (begun.Add(node))
                {
                    open.Push((node, 0));
                }
            }
        }
    }

    private static bool IsPrecaution(FreeingGoal goal) =>
        goal is { Kind: FreeingKind.Switched, Item: Energy or Fluid } or { Kind: FreeingKind.ProvedAtOnce };

    private List<ActionRequest>? Run()
    {
        while (_pending.Count > 0)
        {
            // What makes safe comes first, even where a control has to be moved to and fro for it.
            if (!Next(_first, false) && !Next(_first, true) && !SetFor(_first) && !Next(_left, false) && !Next(_left, true) && !SetFor(_left))
            {
                return null;
            }
        }

        return _done;
    }

    /// <summary>Does the first action that can be done and spoils nothing; false where there is none.</summary>
    private bool Next(HashSet<ActionRequest> among, bool mayMoveControls)
    {
        if (among.Count == 0)
        {
            return false;
        }

        for (var node = _pending.First; node is not null; node = node.Next)
        {
            var action = node.Value;
            if (!among.Contains(action) || !_collector.AllMet(action))
            {
                continue;
            }

            var changes = ActionEffect.On(_state, action);
            if (changes.Any(change => Spoils(action, change, mayMoveControls)))
            {
                continue;
            }

            _pending.Remove(node);
            _left.Remove(action);
            _first.Remove(action);
            Do(action, changes);
            return true;
        }

        return false;
    }

    private void Do(ActionRequest action, ImmutableArray<StateChange> changes)
    {
        _state.Apply(changes);
        _done.Add(action);
    }

    /// <summary>Whether a change takes from an action that is still to be done what it needs and has.</summary>
    private bool Spoils(ActionRequest by, StateChange change, bool mayMoveControls)
    {
        if (!_readers.TryGetValue(change.Variable, out var readers) || (mayMoveControls && change.Variable.Kind == StateKind.Position))
        {
            return false;
        }

        foreach (var reader in readers.ToList())
        {
            if (reader == by || !_left.Contains(reader))
            {
                readers.Remove(reader);
                continue;
            }

            foreach (var need in _collector.Collect(reader))
            {
                if (need.Variable == change.Variable && need.IsMetBy(change.Before) && !need.IsMetBy(change.After))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>Sets a control once more for an action that lacks nothing else; false where there is none such.</summary>
    private bool SetFor(HashSet<ActionRequest> among)
    {
        if (_sets >= MostSets || among.Count == 0)
        {
            return false;
        }

        foreach (var action in _pending.Where(among.Contains))
        {
            var lacking = _collector.Collect(action).Where(need => !_collector.IsMet(need)).ToList();
            foreach (var at in lacking.Select(need => need as ControlAt ?? (need as AnyOf)?.Ways.OfType<ControlAt>().FirstOrDefault()).OfType<ControlAt>())
            {
                var set = new ActionRequest(Verb.Set, at.Control, at.Position);
                if (lacking.TrueForAll(need => need is ControlAt or AnyOf) && _collector.AllMet(set))
                {
                    // It may be one that is to be done anyway.
                    _sets++;
                    _pending.Remove(set);
                    _left.Remove(set);
                    _first.Remove(set);
                    Do(set, ActionEffect.On(_state, set));
                    return true;
                }
            }
        }

        return false;
    }

    private void Reads(ActionRequest action, Need need)
    {
        foreach (var one in need is AnyOf choice ? choice.Ways : [need])
        {
            (_readers.TryGetValue(one.Variable, out var readers) ? readers : _readers[one.Variable] = []).Add(action);
        }
    }
}
