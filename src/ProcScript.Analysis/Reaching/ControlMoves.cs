using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Reaching;

/// <summary>
/// The order of some actions in which controls are moved for the least cost, by going through all states that the actions can lead to, the cheapest
/// first. All else that the actions cost is the same in any order.
/// </summary>
/// <param name="Cost">What it costs to move the controls, there and back.</param>
/// <param name="Order">The actions with the moves.</param>
internal sealed record ControlMoves(double Cost, ImmutableArray<ActionRequest> Order)
{
    /// <summary>How many actions there may be, and how many states are gone through; with more nobody knows.</summary>
    private const int MostActions = 60;

    private const int MostStates = 6_000;

    /// <summary>Finds the order.</summary>
    /// <param name="facts">The machine.</param>
    /// <param name="actions">The actions, none of which moves a control.</param>
    /// <param name="cost">What it costs to set a control to a position.</param>
    /// <returns>Null where there is none, or too much to go through.</returns>
    public static ControlMoves? Fewest(MachineFacts facts, ImmutableArray<ActionRequest> actions, Func<Control, int, double> cost)
    {
        if (actions.Length > MostActions)
        {
            return null;
        }

        var whole = MachineState.Whole(facts.Layout);
        var collector = new NeedCollector(facts, whole, NeedsPhase.Strip, ImmutableHashSet<MachineItem>.Empty);
        List<(ActionRequest Set, double Cost)> moves =
        [
            .. from control in facts.Machine.Controls
               from position in Enumerable.Range(0, control.Positions.Length)
               select (new ActionRequest(Verb.Set, control, position), cost(control, position)),
        ];
        var open = new PriorityQueue<Moment, (double Cost, int Left)>();
        var known = new HashSet<(ulong Done, string Positions)>();
        open.Enqueue(new Moment(whole, 0, null, default), (0, actions.Length));
        while (open.TryDequeue(out var at, out var price))
        {
            if (price.Left == 0)
            {
                return new ControlMoves(price.Cost, [.. at.Trail()]);
            }

            if (!known.Add((at.Done, string.Join(' ', facts.Machine.Controls.Select(control => at.State[new StateVariable(StateKind.Position, control.Index)])))))
            {
                continue;
            }

            if (known.Count > MostStates)
            {
                return null;
            }

            var there = collector.On(at.State);
            for (var place = 0; place < actions.Length; place++)
            {
                if ((at.Done >> place & 1) == 0 && there.AllMet(actions[place]))
                {
                    open.Enqueue(at.After(actions[place], at.Done | 1UL << place), (price.Cost, price.Left - 1));
                }
            }

            foreach (var (set, more) in moves)
            {
                if (there.AllMet(set))
                {
                    open.Enqueue(at.After(set, at.Done), (price.Cost + more, price.Left));
                }
            }
        }

        return null;
    }

    private sealed record Moment(MachineState State, ulong Done, Moment? Before, ActionRequest By)
    {
        public Moment After(ActionRequest action, ulong done)
        {
            var next = State.Copy();
            next.Apply(ActionEffect.On(State, action));
            return new Moment(next, done, this, action);
        }

        public IEnumerable<ActionRequest> Trail()
        {
            var trail = new Stack<ActionRequest>();
            for (var at = this; at.Before is { } before; at = before)
            {
                trail.Push(at.By);
            }

            return trail;
        }
    }
}
