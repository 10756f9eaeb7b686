using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Proving;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Crews;

/// <summary>
/// Proves that a job can be worked in an order, on the machine itself: performs strip, work and refit action by action and asks of each what it needs
/// there. It knows the action table and the list of actions, and nothing of schedules or of how an order was found.
/// </summary>
internal sealed class CrewProof(StripRun strip, RefitRun refit)
{
    /// <summary>
    /// What fails when the actions are done in an order; null where all of it can be done and the machine is as it was.
    /// </summary>
    /// <param name="numbers">The numbers of all actions, those of the refit after all others.</param>
    public string? Failure(IEnumerable<int> numbers)
    {
        var order = numbers.ToList();
        var state = strip.Start.Copy();
        var collector = new NeedCollector(strip.Facts, state, NeedsPhase.Strip, strip.Discarded);
        foreach (var action in order.TakeWhile(number => number < strip.Actions.Length).Select(number => strip.Actions[number]))
        {
            var request = RefitProof.Request(action, strip.Procedure);
            if (collector.Collect(request).Find(need => !collector.IsMet(need)) is { } lacking)
            {
                return $"{action.Verb} {action.Target?.Name} lacks {lacking}";
            }

            state.Apply(ActionEffect.On(state, request));
        }

        if (strip.End.Differences(state).Any())
        {
            return "the strip ends otherwise";
        }

        var rest = order.Skip(strip.Actions.Length).Select(number => refit.Actions[number - strip.Actions.Length]).ToImmutableArray();
        return rest.Length == refit.Actions.Length
            ? RefitProof.Failures(strip.Facts, strip, rest).Select(failure => failure.ToString()).FirstOrDefault()
            : "some of it is not done, or not in its phase";
    }

    /// <summary>
    /// Two actions that may be done in either order, for a schedule lets them, and of which one changes what the other reads or changes; none
    /// where every order that the schedule allows comes to the same. Orders differ by swaps of neighbours: where no swap matters and one order is
    /// proved, all are.
    /// </summary>
    /// <param name="mayComeFirst">Whether the schedule lets the second of two actions, by number, be done before the first.</param>
    public (int, int)? Clash(Func<int, int, bool> mayComeFirst)
    {
        foreach (var actions in (ImmutableArray<PerformedAction>[])[strip.Actions, refit.Actions])
        {
            var readers = actions.SelectMany(action => Read(action).Select(read => (read, action.Number))).ToLookup(pair => pair.read, pair => pair.Number);
            foreach (var action in actions)
            {
                foreach (var change in action.Changes)
                {
                    foreach (var other in readers[change.Variable].Where(other => other != action.Number))
                    {
                        var (first, second) = (Math.Min(other, action.Number), Math.Max(other, action.Number));
                        if (mayComeFirst(first, second) && !Harmless(actions[other - actions[0].Number], change))
                        {
                            return (first, second);
                        }
                    }
                }
            }
        }

        return null;
    }

    /// <summary>Whether a reader is met before and after a change, and changes nothing of the same thing itself.</summary>
    private static bool Harmless(PerformedAction reader, StateChange change) =>
        !reader.Changes.Any(own => own.Variable == change.Variable)
        && reader.Needs.Where(met => met.Need.Variable == change.Variable).All(met => met.Need.IsMetBy(change.Before) && met.Need.IsMetBy(change.After));

    private static IEnumerable<StateVariable> Read(PerformedAction action) =>
        action.Needs.Select(met => met.Need.Variable).Concat(action.Changes.Select(change => change.Variable)).Distinct();
}
