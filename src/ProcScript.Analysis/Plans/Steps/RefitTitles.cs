using ProcScript.Analysis.Messages;
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
    public static string? Service(IReadOnlyCollection<PerformedAction> actions, Wordbook book)
    {
        if (!actions.All(action => action.Verb is Verb.Restore or Verb.Fill or Verb.Set or Verb.Check or Verb.Record or Verb.Pause))
        {
            return null;
        }

        return (Titles(actions, Verb.Restore, book), Titles(actions, Verb.Fill, book), Titles(actions, Verb.Set, book)) switch
        {
            ({ Length: > 0 } energies, "", _) => book.Say("title.return", ("energies", energies)),
            ({ Length: > 0 } energies, var fluids, _) => book.Say("title.return-refill", ("energies", energies), ("fluids", fluids)),
            ("", { Length: > 0 } fluids, _) => book.Say("title.refill", ("fluids", fluids)),
            ("", "", { Length: > 0 } controls) => book.Say("title.controls", ("controls", controls)),
            _ => null,
        };
    }

    /// <summary>What the title of the stage is followed by: <c>; 230 V mains comes back on</c>, or for a test; empty where no energy comes back.</summary>
    public static string Addition(IReadOnlyCollection<PerformedAction> actions, Wordbook book)
    {
        var last = actions.Where(action => action.Target is Energy).GroupBy(action => (Energy)action.Target!).ToList();
        return Words("title.comes-back", last.Where(energy => energy.Last().Verb == Verb.Restore), book)
            + Words("title.on-for-test", last.Where(energy => energy.Last().Verb != Verb.Restore && energy.Any(action => action.Verb == Verb.Restore)), book);
    }

    private static string Words(string message, IEnumerable<IGrouping<Energy, PerformedAction>> energies, Wordbook book)
    {
        var titles = energies.Select(energy => energy.Key.Title).ToList();
        return titles.Count == 0 ? "" : book.Say(message, ("energies", book.And(titles)), ("count", titles.Count));
    }

    // A title may have a comma in it: "compressed air, 10 bar".
    private static string Titles(IEnumerable<PerformedAction> actions, Verb verb, Wordbook book) =>
        book.And([.. actions.Where(action => action.Verb == verb).Select(action => action.Target!.Title).Distinct()]);
}
