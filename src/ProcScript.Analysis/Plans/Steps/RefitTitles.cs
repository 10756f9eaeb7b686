using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// What the title of a card of the refit says of energies, fluids and controls: whoever takes it up must see there that power comes back on it.
/// </summary>
internal static class RefitTitles
{
    /// <summary>
    /// The title of a card that does nothing but bring back energies, fluids and controls: <c>Return to service: 230 V mains</c>; null where it
    /// does other things, and has the title of its stage.
    /// </summary>
    public static string? Service(IReadOnlyCollection<PerformedAction> actions)
    {
        if (!actions.All(action => action.Verb is Verb.Restore or Verb.Fill or Verb.Set or Verb.Check or Verb.Record or Verb.Pause))
        {
            return null;
        }

        return (Titles(actions, Verb.Restore), Titles(actions, Verb.Fill), Titles(actions, Verb.Set)) switch
        {
            ({ Length: > 0 } energies, "", _) => $"Return to service: {energies}",
            ({ Length: > 0 } energies, var fluids, _) => $"Return to service: {energies}; refill: {fluids}",
            ("", { Length: > 0 } fluids, _) => $"Refill: {fluids}",
            ("", "", { Length: > 0 } controls) => $"Controls: {controls}",
            _ => null,
        };
    }

    /// <summary>What the title of the stage is followed by: <c>; 230 V mains comes back on</c>, or for a test; empty where no energy comes back.</summary>
    public static string Addition(IReadOnlyCollection<PerformedAction> actions)
    {
        var last = actions.Where(action => action.Target is Energy).GroupBy(action => (Energy)action.Target!).ToList();
        return Words(last.Where(energy => energy.Last().Verb == Verb.Restore), "back on")
            + Words(last.Where(energy => energy.Last().Verb != Verb.Restore && energy.Any(action => action.Verb == Verb.Restore)), "on for a test");
    }

    private static string Words(IEnumerable<IGrouping<Energy, PerformedAction>> energies, string how) => energies.Select(energy => energy.Key.Title).ToList() switch
    {
        [] => "",
        [var one] => $"; {one} comes {how}",
        var several => $"; {string.Join(", ", several.SkipLast(1))} and {several[^1]} come {how}",
    };

    private static string Titles(IEnumerable<PerformedAction> actions, Verb verb) =>
        string.Join(", ", actions.Where(action => action.Verb == verb).Select(action => action.Target!.Title).Distinct());
}
