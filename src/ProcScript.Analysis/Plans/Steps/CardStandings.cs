using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>How the machine stands at the end of each card: the state of the run there, told in short.</summary>
internal static class CardStandings
{
    /// <summary>By phase and card.</summary>
    public static IReadOnlyDictionary<(PlanPhase Phase, int Card), PlanStanding> Of(
        StripRun strip, RefitRun refit, StepList list, ImmutableArray<PlanBag> bags, ImmutableArray<PlanTemporary> temporary, Wordbook book)
    {
        var cards = strip.Actions.Concat(refit.Actions).Zip(list.Steps).ToLookup(done => (done.Second.Phase, done.Second.Card));
        var standings = new Dictionary<(PlanPhase, int), PlanStanding>();
        var state = strip.Start.Copy();
        var last = 0;
        foreach (var phase in Enum.GetValues<PlanPhase>())
        {
            for (var card = 0; card < list.Cards[phase].Length; card++)
            {
                foreach (var (action, step) in cards[(phase, card)])
                {
                    foreach (var change in action.Changes)
                    {
                        state.Apply(change);
                    }

                    last = step.Number;
                }

                standings.Add((phase, card), At(last, strip, state, bags, temporary, book));
            }
        }

        return standings;
    }

    private static PlanStanding At(int last, StripRun strip, MachineState state, ImmutableArray<PlanBag> bags, ImmutableArray<PlanTemporary> temporary, Wordbook book)
    {
        var standing = new MachineStanding(strip, state, book);
        var off = standing.PartsOff.ToLookup(part => state.Place(part));
        return new PlanStanding
        {
            PartsOut = off[PartPlace.Out].Count(),
            PartsAside = off[PartPlace.Aside].Count(),
            JointsOpen = standing.JointsOpen.Count(),
            Bags = [.. bags.Where(bag => bag.Contents.Any(line => line.StripStep <= last && line.RefitStep > last)).Select(bag => bag.Number)],
            Isolated = Energies(EnergyState.Dead),
            Unproved = Energies(EnergyState.Unproved),
            FluidsOut = Titles(standing.FluidsOut),
            Propped = Titles(standing.PartsPropped),
            Caps = temporary.Where(one => one.IsCap && one.IsOnAfter(last)).Sum(one => one.Count),
            Temporary = [.. temporary.Where(one => !one.IsCap && one.IsOnAfter(last)).Select(one => one.Title)],
        };

        ImmutableArray<string> Energies(EnergyState wanted) =>
            Titles(strip.Procedure.Machine.Energies.Where(energy => (EnergyState)standing.Value(StateKind.Live, energy) == wanted));
    }

    private static ImmutableArray<string> Titles(IEnumerable<MachineItem> items) => [.. items.Select(item => item.Title)];
}
