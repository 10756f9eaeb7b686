using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Comparing;

/// <summary>Which steps came, went, moved or say otherwise.</summary>
internal static class StepComparison
{
    /// <summary>The steps that are otherwise, in the order of the new cards; those that went stand last.</summary>
    public static ImmutableArray<StepChange> Of(ImmutableArray<PackStep> before, ImmutableArray<PackStep> after)
    {
        var was = before.Select((step, index) => (step, index)).ToDictionary(one => one.step.Key, one => one);
        var now = after.Select(step => step.Key).ToHashSet();
        var inOrder = LongestRise.Of([.. after.Where(step => was.ContainsKey(step.Key)).Select(step => was[step.Key].index)]);
        var renamed = Renamed(before, after);

        var changes = ImmutableArray.CreateBuilder<StepChange>();
        foreach (var step in after)
        {
            if (!was.TryGetValue(step.Key, out var old))
            {
                changes.Add(new StepChange("added", step.Phase, step.Step.Text, 0, step.Step.Number, "", step.Card, []));
                continue;
            }

            var values = Values(old.step.Step, step.Step);
            var otherCard = old.step.Card != step.Card && renamed.GetValueOrDefault((step.Phase, old.step.Card)) != step.Card;
            if (!inOrder.Contains(old.index) || otherCard)
            {
                changes.Add(Change("moved", old.step, step, values));
            }
            else if (!values.IsEmpty)
            {
                changes.Add(Change("changed", old.step, step, values));
            }
        }

        changes.AddRange(before.Where(step => !now.Contains(step.Key))
            .Select(step => new StepChange("dropped", step.Phase, step.Step.Text, step.Step.Number, 0, step.Card, "", [])));
        return changes.ToImmutable();
    }

    private static StepChange Change(string kind, PackStep before, PackStep after, ImmutableArray<ValueChange> values) =>
        new(kind, after.Phase, after.Step.Text, before.Step.Number, after.Step.Number, before.Card, after.Card, values);

    /// <summary>Cards that only have another title: one went, one came, and most that stood on the one stands on the other.</summary>
    private static Dictionary<(string Phase, string Card), string> Renamed(ImmutableArray<PackStep> before, ImmutableArray<PackStep> after)
    {
        var (old, fresh) = (before.Select(step => (step.Phase, step.Card)).ToHashSet(), after.Select(step => (step.Phase, step.Card)).ToHashSet());
        var cardNow = after.ToDictionary(step => step.Key, step => (step.Phase, step.Card));
        return before
            .Where(step => !fresh.Contains((step.Phase, step.Card)) && cardNow.TryGetValue(step.Key, out var now) && !old.Contains(now))
            .GroupBy(step => (step.Phase, step.Card))
            .ToDictionary(card => card.Key, card => card.CountBy(step => cardNow[step.Key].Card).MaxBy(count => count.Value).Key);
    }

    private static ImmutableArray<ValueChange> Values(PlanStep before, PlanStep after) =>
    [
        .. Sayings(before).Zip(Sayings(after))
            .Where(pair => pair.First.Said != pair.Second.Said && !(pair.First.What == "text" && before.Count != after.Count))
            .Select(pair => new ValueChange(pair.First.What, pair.First.Said, pair.Second.Said)),
    ];

    private static IEnumerable<(string What, string Said)> Sayings(PlanStep step)
    {
        yield return ("count", step.Count == 0 ? "" : step.Count.ToString(CultureInfo.InvariantCulture));
        yield return ("text", step.Text);
        yield return ("way to turn", step.Turn);
        yield return ("torque", step.Torque);
        yield return ("new parts", string.Join(", ", step.NewParts.Select(part => part.Text)));
        yield return ("scrap", step.Scrap);
        yield return ("tools", string.Join(", ", step.Tools));
        yield return ("crowfoot", step.Crowfoot);
        yield return ("people", step.People.ToString(CultureInfo.InvariantCulture));
        yield return ("where", step.Where);
        yield return ("how", string.Join("\n", step.How));
        yield return ("check", string.Join("\n", step.Checks));
        yield return ("reading", step.Reading is { } reading ? $"{reading.Text} {reading.Limits}".Trim() : "");
        yield return ("protective equipment", string.Join(", ", step.Ppe));
        yield return ("certificates", string.Join(", ", step.Certificates));
        yield return ("place", step.Room == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{step.Place}, room for {step.Room}"));
        yield return ("photo", string.Join("\n", step.Photos));
        yield return ("picture", string.Join("\n", step.Figures.Select(figure => $"{figure.Caption} ({figure.File}{(figure.Hash.Length > 8 ? ", " + figure.Hash[..8] : "")})")));
        yield return ("still open when it comes back", step.Return is { } back ? string.Join("\n", back.StillOpen.Select(open => $"{open.Title}: {open.State}")) : "");
        yield return ("store", step.Store);
        yield return ("consumes", string.Join(", ", step.Consumes));
        yield return ("cures", step.Cure?.Time ?? "");
        yield return ("in background", step.InBackground ? "yes" : "no");
        yield return ("mass", step.Kilograms > 0 ? string.Create(CultureInfo.InvariantCulture, $"{step.Kilograms:0.###} kg") : "");
        yield return ("hoist", step.Hoist ? "yes" : "no");
        yield return ("signed by a second person", step.Signed ? "yes" : "no");
        yield return ("look-alike", step.Which?.Piece ?? "");
        yield return ("put in for", step.Because);
        yield return ("time", step.IsUsualTime ? "" : string.Create(CultureInfo.InvariantCulture, $"{step.Seconds:0.#} s"));
    }
}
