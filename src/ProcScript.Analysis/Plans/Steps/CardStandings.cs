using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>How the machine stands at the end of each card: the state of the run there, told in short.</summary>
internal sealed class CardStandings
{
    private readonly StripRun _strip;
    private readonly MachineState _state;
    private readonly MachineStanding _standing;
    private readonly ImmutableArray<PlanBag> _bags;
    private readonly ImmutableArray<PlanTemporary> _temporary;

    // What came in whole and no step has touched is whole: a card of a large machine is told from what the job has to do with.
    private readonly HashSet<Part> _parts;
    private readonly HashSet<Joint> _joints;

    private CardStandings(StripRun strip, ImmutableArray<PlanBag> bags, ImmutableArray<PlanTemporary> temporary, Wordbook book)
    {
        (_strip, _state, _bags, _temporary) = (strip, strip.Start.Copy(), bags, temporary);
        _standing = new MachineStanding(strip, _state, book);
        var machine = strip.Procedure.Machine;
        _parts = [.. machine.Parts.Where(part => _state.Place(part) != PartPlace.Fitted)];
        _joints = [.. machine.Joints.Where(joint => !_standing.IsWhole(joint))];
    }

    /// <summary>By phase and card.</summary>
    public static IReadOnlyDictionary<(PlanPhase Phase, int Card), PlanStanding> Of(
        StripRun strip, RefitRun refit, StepList list, ImmutableArray<PlanBag> bags, ImmutableArray<PlanTemporary> temporary, Wordbook book)
    {
        var cards = strip.Actions.Concat(refit.Actions).Zip(list.Steps).ToLookup(done => (done.Second.Phase, done.Second.Card));
        var walk = new CardStandings(strip, bags, temporary, book);
        var standings = new Dictionary<(PlanPhase, int), PlanStanding>();
        var last = 0;
        foreach (var phase in Enum.GetValues<PlanPhase>())
        {
            for (var card = 0; card < list.Cards[phase].Length; card++)
            {
                foreach (var (action, step) in cards[(phase, card)])
                {
                    walk.Do(action);
                    last = step.Number;
                }

                standings.Add((phase, card), walk.At(last));
            }
        }

        return standings;
    }

    private void Do(PerformedAction action)
    {
        var machine = _strip.Procedure.Machine;
        foreach (var change in action.Changes)
        {
            _state.Apply(change);
            switch (change.Variable.Kind)
            {
                case StateKind.Place:
                    _parts.Add(machine.Parts[change.Variable.Index]);
                    break;
                case StateKind.Attached or StateKind.Slack:
                    _joints.Add(machine.Joints[change.Variable.Index]);
                    break;
            }
        }
    }

    private PlanStanding At(int last)
    {
        return new PlanStanding
        {
            PartsOut = _parts.Count(part => _standing.IsOff(part) && _state.Place(part) == PartPlace.Out),
            PartsAside = _parts.Count(part => _standing.IsOff(part) && _state.Place(part) == PartPlace.Aside),
            JointsOpen = _joints.Count(_standing.IsOpen),
            Bags = [.. _bags.Where(bag => IsFilled(bag, last)).Select(bag => bag.Number)],
            Isolated = Energies(EnergyState.Dead),
            Unproved = Energies(EnergyState.Unproved),
            FluidsOut = Titles(_standing.FluidsOut),
            Propped = Titles(_standing.PartsPropped),
            Caps = _temporary.Where(one => one.IsCap && one.IsOnAfter(last)).Sum(one => one.Count),
            Temporary = [.. _temporary.Where(one => !one.IsCap && one.IsOnAfter(last)).Select(one => one.Title)],
        };

        ImmutableArray<string> Energies(EnergyState wanted) =>
            Titles(_strip.Procedure.Machine.Energies.Where(energy => (EnergyState)_standing.Value(StateKind.Live, energy) == wanted));
    }

    private static bool IsFilled(PlanBag bag, int last)
    {
        foreach (var line in bag.Contents)
        {
            if (line.StripStep <= last && line.RefitStep > last)
            {
                return true;
            }
        }

        return false;
    }

    private static ImmutableArray<string> Titles(IEnumerable<MachineItem> items) => [.. items.Select(item => item.Title)];
}
