using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Tests.Properties;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>
/// The cheapest strip to something by going through the states of the naive machine, the cheapest first: no clauses, no closure, no order. It moves
/// whatever can be moved.
/// </summary>
internal sealed class BruteReach(Machine machine, ReachCosts costs, Func<NaiveMachine, bool> isReached, Predicate<Move>? may = null)
{
    /// <summary>How many states are gone through before it gives up.</summary>
    private const int MostStates = 8_000;

    /// <summary>Nobody gives a time for it: half of what a prop takes that comes and goes.</summary>
    private readonly double _again = machine.Parts.IsEmpty ? 0 : costs.Of(new FreeingGoal(FreeingKind.Propped, machine.Parts[0])) / 2;

    private readonly List<(Move Move, double Cost)> _moves = [.. Moves(machine, costs).Where(one => may?.Invoke(one.Move) != false)];

    /// <summary>By how many ways it comes to each state: which one was taken may count for the way back.</summary>
    public int Ways { get; init; } = 1;

    /// <summary>Whether there were too many states to go through.</summary>
    public bool GaveUp { get; private set; }

    /// <summary>The states in which it is reached with what they cost, the cheapest first; none where it is never, or where there are too many states.</summary>
    public IEnumerable<(double Cost, IReadOnlyList<Move> Moves)> Find()
    {
        var open = new PriorityQueue<(NaiveMachine State, Trail? Trail), double>();
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        open.Enqueue((new NaiveMachine(machine), null), 0);
        while (open.TryDequeue(out var at, out var cost))
        {
            var state = at.State.Describe();
            var ways = known.GetValueOrDefault(state);
            if (ways == Ways)
            {
                continue;
            }

            known[state] = ways + 1;

            if (known.Count > MostStates)
            {
                GaveUp = true;
                yield break;
            }

            if (isReached(at.State))
            {
                yield return (cost, Trail.ToList(at.Trail));
                continue;
            }

            foreach (var (move, price) in _moves)
            {
                if (at.State.Can(move, refit: false))
                {
                    var next = at.State.Copy();
                    next.Do(move);
                    // What leaves its prop behind stands on it again before it goes back.
                    var again = move is { Verb: Verb.Remove, Item: Part part } && at.State.IsPropped(part) ? _again : 0;
                    open.Enqueue((next, new Trail(move, at.Trail)), cost + price + again);
                }
            }
        }
    }

    /// <summary>Whatever can be moved while a machine comes apart, with what it costs there and back.</summary>
    public static IEnumerable<(Move Move, double Cost)> Moves(Machine machine, ReachCosts costs)
    {
        foreach (var joint in machine.Joints)
        {
            yield return (new Move(ActionTable.Opening(joint).Verb, joint, joint.Count), costs.Of(new FreeingGoal(FreeingKind.Off, joint)));
            if (ActionTarget.Of(joint) == ActionTargets.Fastener && !joint.SingleUse)
            {
                yield return (new Move(Verb.Loosen, joint, joint.Count), costs.Of(new FreeingGoal(FreeingKind.Slack, joint)));
            }
        }

        foreach (var part in machine.Parts)
        {
            yield return (new Move(Verb.Remove, part, (int)PartPlace.Out), costs.Of(new FreeingGoal(FreeingKind.Out, part)));
            yield return (new Move(Verb.Support, part, 1), costs.Of(new FreeingGoal(FreeingKind.Propped, part)));
            if (part.Aside is not null)
            {
                yield return (new Move(Verb.Aside, part, (int)PartPlace.Aside), costs.Of(new FreeingGoal(FreeingKind.Aside, part)));
            }
        }

        foreach (var item in machine.Energies.Concat<MachineItem>(machine.Fluids))
        {
            yield return (new Move(ActionTable.Opening(item).Verb, item, 0), costs.Of(new FreeingGoal(FreeingKind.Switched, item)));
        }

        foreach (var control in machine.Controls)
        {
            for (var position = 0; position < control.Positions.Length; position++)
            {
                yield return (new Move(Verb.Set, control, position), costs.Of(new FreeingGoal(FreeingKind.Switched, control) { Position = position }));
            }
        }
    }

    private sealed record Trail(Move Move, Trail? Before)
    {
        public static IReadOnlyList<Move> ToList(Trail? trail)
        {
            var moves = new List<Move>();
            for (; trail is not null; trail = trail.Before)
            {
                moves.Insert(0, trail.Move);
            }

            return moves;
        }
    }
}
