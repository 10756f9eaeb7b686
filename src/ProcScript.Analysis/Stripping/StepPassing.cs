using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>
/// Whether a step of a strip could as well stand before or after others: what it needs does not change on the way, and nobody that it
/// passes needs it done, or not done. The run may hold errors: the need that is to be mended is left out of the account.
/// </summary>
internal static class StepPassing
{
    /// <summary>Whether the step could stand right before an earlier one.</summary>
    public static bool CanGoBefore(StripRun run, Step step, Step earlier, StateVariable mended)
    {
        var (first, own) = (run.FirstActionOf(earlier), run.FirstActionOf(step));
        return first >= 0 && first < own && CanPass(run, step, first..own, change => change.After, mended);
    }

    /// <summary>Whether the step could stand right after a later one.</summary>
    public static bool CanGoAfter(StripRun run, Step step, Step later, StateVariable mended)
    {
        var (own, last) = (run.LastActionOf(step), run.LastActionOf(later));
        return own >= 0 && own < last && CanPass(run, step, (own + 1)..(last + 1), change => change.Before, mended);
    }

    private static bool CanPass(StripRun run, Step step, Range passed, Func<StateChange, int> seen, StateVariable mended)
    {
        var own = run.Actions.Where(action => ReferenceEquals(RefitFinding.Step(action), step)).ToList();
        var needed = own.SelectMany(action => action.Needs).Select(met => met.Need.Variable).Where(variable => variable != mended).ToHashSet();
        var changed = own.SelectMany(action => action.Changes).ToDictionary(change => change.Variable, seen);
        return own.Count == 1 && run.Actions[passed].All(action =>
            action.Changes.All(change => !needed.Contains(change.Variable) && !changed.ContainsKey(change.Variable))
            && action.Needs.All(met => !changed.TryGetValue(met.Need.Variable, out var value) || met.Need.IsMetBy(value)));
    }
}
