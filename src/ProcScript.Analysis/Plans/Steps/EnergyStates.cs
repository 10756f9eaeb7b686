using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// How the energies that a job isolates stand on each of its cards. All steps are walked in order: an energy may come back and be isolated
/// again any number of times.
/// </summary>
internal sealed class EnergyStates
{
    private const string Live = "live";
    private const string Isolated = "isolated";
    private const string Unproved = "unproved";

    private readonly Dictionary<Energy, List<PlanEnergyTurn>> _turns = [];
    private readonly Dictionary<(PlanPhase Phase, int Card), ImmutableArray<PlanEnergyState>> _cards = [];

    private EnergyStates(StepList list)
    {
        Energies = [.. list.Steps.Where(step => step.Verb == Verb.Isolate).Select(step => step.Target).OfType<Energy>().Distinct()];
        foreach (var energy in Energies)
        {
            _turns.Add(energy, []);
        }

        MadeSafe = Energies
            .SelectMany((energy, index) => FirstIsolation(list, energy).Select(step => (step, index)))
            .ToDictionary(made => made.step, made => made.index + 1);
        var steps = list.Steps.ToLookup(step => (step.Phase, step.Card));
        foreach (var phase in Enum.GetValues<PlanPhase>())
        {
            for (var card = 0; card < list.Cards[phase].Length; card++)
            {
                _cards.Add((phase, card), [.. Energies.Select(energy => Walk(energy, steps[(phase, card)]))]);
            }
        }
    }

    /// <summary>The steps that first isolate an energy, and those that prove it then, with its place among the energies, from 1.</summary>
    public IReadOnlyDictionary<int, int> MadeSafe { get; }

    /// <summary>The energies, in the order in which they are first isolated.</summary>
    public ImmutableArray<Energy> Energies { get; }

    /// <summary>Walks the steps.</summary>
    public static EnergyStates Of(StepList list) => new(list);

    /// <summary>How they stand when a card is taken up, and what becomes of them on it.</summary>
    public ImmutableArray<PlanEnergyState> On(PlanPhase phase, int card) => _cards[(phase, card)];

    /// <summary>Every step after which the energy stands otherwise.</summary>
    public ImmutableArray<PlanEnergyTurn> Turns(Energy energy) => [.. _turns[energy]];

    /// <summary>The other energies that stay isolated, proved or not, while a step brings one back.</summary>
    public IEnumerable<Energy> IsolatedBeside(PlannedStep step) =>
        Energies.Where(other => other != step.Target && StateOf([.. _turns[other].TakeWhile(turn => turn.Step < step.Number)]) != Live);

    private static IEnumerable<int> FirstIsolation(StepList list, Energy energy)
    {
        var first = list.Steps.First(step => step.Verb == Verb.Isolate && step.Target == energy);
        return first.ProvedAt > 0 ? [first.Number, first.ProvedAt] : [first.Number];
    }

    private PlanEnergyState Walk(Energy energy, IEnumerable<PlannedStep> card)
    {
        var turns = _turns[energy];
        var taken = turns.Count;
        var (state, since) = (StateOf(turns), taken == 0 ? 0 : turns[^1].Step);
        foreach (var step in card)
        {
            var (before, after) = (StateOf(turns), After(StateOf(turns), energy, step));
            if (before != after)
            {
                turns.Add(new PlanEnergyTurn(step.Number, before, after));
            }
        }

        return new PlanEnergyState(energy.Name, energy.Title, state, since, [.. turns.Skip(taken)]);
    }

    private static string StateOf(List<PlanEnergyTurn> turns) => turns.Count == 0 ? Live : turns[^1].State;

    private static string After(string before, Energy energy, PlannedStep step)
    {
        var after = step switch
        {
            { Verb: Verb.Isolate } when step.Target == energy => Unproved,
            { Verb: Verb.Restore } when step.Target == energy => Live,
            _ => before,
        };
        return after == Unproved && StepProse.Verified(step) == energy ? Isolated : after;
    }
}
