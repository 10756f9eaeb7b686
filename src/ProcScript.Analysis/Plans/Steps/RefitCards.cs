using System.Collections.Immutable;
using ProcScript.Analysis.Runs;

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
    private const string CloseOut = "Close out";

    /// <summary>A card of the pack has this title already, and on the way back it says the opposite.</summary>
    private const string MakeSafe = "Make safe";

    private const string MakeReady = "Make ready again";

    /// <summary>Deals the refit.</summary>
    public static RefitCards Deal(StripRun strip, RefitRun refit)
    {
        var stageOf = Stages(strip);
        var last = refit.Actions.ToList().FindLastIndex(action => action.Origin is Tightened || Undone(action) is not null);
        var titles = ImmutableArray.CreateBuilder<string>();
        var cardOf = new Dictionary<int, int>();
        string? current = null;
        for (var i = 0; i < refit.Actions.Length; i++)
        {
            // A check, or a control set for one, or the torque of what went in finger-tight, stays on the card that it falls on.
            var title = i > last && refit.Actions[i].Origin is not TestStep ? CloseOut : TitleOf(refit.Actions[i], stageOf) ?? current;
            title ??= Next(refit.Actions, i, stageOf);
            if (title != current)
            {
                current = title;
                titles.Add(title);
            }

            cardOf.Add(refit.Actions[i].Number, titles.Count - 1);
        }

        return new RefitCards(Titled(titles, refit.Actions.ToLookup(action => cardOf[action.Number])), cardOf);
    }

    /// <summary>The titles of the cards, from those of their stages.</summary>
    private static ImmutableArray<string> Titled(IEnumerable<string> stages, ILookup<int, PerformedAction> cards)
    {
        var used = new HashSet<string>();
        var titles = ImmutableArray.CreateBuilder<string>();
        foreach (var (card, stage) in stages.Index())
        {
            PerformedAction[] actions = [.. cards[card]];
            var isTest = Array.Exists(actions, action => action.Origin is TestStep);
            var service = isTest || stage == CloseOut ? null : RefitTitles.Service(actions);
            var title = service ?? (stage.Equals(MakeSafe, StringComparison.OrdinalIgnoreCase) ? MakeReady : stage);
            titles.Add((used.Add(title) ? title : $"{title}, continued") + (service is null ? RefitTitles.Addition(actions) : ""));
        }

        return titles.ToImmutable();
    }

    private static Dictionary<int, string> Stages(StripRun strip)
    {
        var stageOf = strip.Work.ToDictionary(action => action.Number, _ => StepList.WorkTitle);
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
    private static string? TitleOf(PerformedAction action, Dictionary<int, string> stageOf) => action.Origin is TestStep test
        ? $"Test: {test.Rule.Title}"
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
