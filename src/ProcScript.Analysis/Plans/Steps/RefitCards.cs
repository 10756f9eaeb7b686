using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Texts;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// The refit dealt onto cards: one for each stage of the strip, as long as the order stays within it. Where an author's rule takes the
/// refit back to a stage, that stage gets one more card; the checks at the very end have their own. A card on which energies come back
/// says so in its title.
/// </summary>
/// <param name="Titles">The titles of the cards.</param>
/// <param name="CardOf">The card of each action of the refit, by its number.</param>
internal sealed record RefitCards(ImmutableArray<string> Titles, IReadOnlyDictionary<int, int> CardOf)
{
    /// <summary>Deals the refit.</summary>
    public static RefitCards Deal(StripRun strip, RefitRun refit, Wordbook book)
    {
        var stageOf = Stages(strip, book);
        var closeOut = book.Say("title.close-out");
        var last = refit.Actions.ToList().FindLastIndex(action => action.Origin is Tightened || Undone(action) is not null);
        var titles = ImmutableArray.CreateBuilder<string>();
        var cardOf = new Dictionary<int, int>();
        string? current = null;
        for (var i = 0; i < refit.Actions.Length; i++)
        {
            // A check, or a control set for one, or the torque of what went in finger-tight, stays on the card that it falls on.
            var title = i > last && refit.Actions[i].Origin is not TestStep ? closeOut : TitleOf(refit.Actions[i], stageOf, book) ?? current;
            title ??= Next(refit.Actions, i, stageOf);
            if (title != current)
            {
                current = title;
                titles.Add(title);
            }

            cardOf.Add(refit.Actions[i].Number, titles.Count - 1);
        }

        return new RefitCards(Titled(titles, refit.Actions.ToLookup(action => cardOf[action.Number]), book), cardOf);
    }

    /// <summary>The titles of the cards, from those of their stages.</summary>
    private static ImmutableArray<string> Titled(IEnumerable<string> stages, ILookup<int, PerformedAction> cards, Wordbook book)
    {
        var used = new HashSet<string>();
        var titles = ImmutableArray.CreateBuilder<string>();
        foreach (var (card, stage) in stages.Index())
        {
            PerformedAction[] actions = [.. cards[card]];
            var isTest = Array.Exists(actions, action => action.Origin is TestStep);
            var service = isTest || stage == book.Say("title.close-out") ? null : RefitTitles.Service(actions, book);
            var title = service ?? (IsMakeSafe(stage, book) ? book.Say("title.make-ready") : stage);
            titles.Add((used.Add(title) ? title : book.Say("title.continued", ("title", title))) + (service is null ? RefitTitles.Addition(actions, book) : ""));
        }

        return titles.ToImmutable();
    }

    /// <summary>A card of the pack has this title already, and on the way back it says the opposite.</summary>
    private static bool IsMakeSafe(string stage, Wordbook book) =>
        LibraryTexts.Plain(stage).Equals(Wordbook.English.Say("title.make-safe"), StringComparison.OrdinalIgnoreCase)
        || LibraryTexts.Plain(stage).Equals(book.Say("title.make-safe"), StringComparison.OrdinalIgnoreCase);

    private static Dictionary<int, string> Stages(StripRun strip, Wordbook book)
    {
        var stageOf = strip.Work.ToDictionary(action => action.Number, _ => book.Say("title.work"));
        foreach (var stage in strip.Stages)
        {
            foreach (var action in stage.Actions)
            {
                stageOf.Add(action.Number, StepList.CardTitle(stage));
            }
        }

        return stageOf;
    }

    /// <summary>The title of the card that an action makes for itself: a test has its own. Null where it stays where it falls.</summary>
    private static string? TitleOf(PerformedAction action, Dictionary<int, string> stageOf, Wordbook book) => action.Origin is TestStep test
        ? book.Say("title.test", ("test", test.Rule.Title))
        : Undone(action) is { } undone ? stageOf[undone.Number] : null;

    /// <summary>The title of the first card, where the refit begins with a check.</summary>
    private static string Next(ImmutableArray<PerformedAction> actions, int from, Dictionary<int, string> stageOf) =>
        actions.Skip(from).Select(Undone).OfType<PerformedAction>().Select(undone => stageOf[undone.Number]).First();

    /// <summary>The action of the strip that an action of the refit undoes or serves to undo.</summary>
    private static PerformedAction? Undone(PerformedAction action) => action.Origin switch
    {
        InverseOf inverse => inverse.Action,
        InsertedSet inserted => inserted.Undoes,
        PropAgain again => again.Removal,
        _ => null,
    };
}
