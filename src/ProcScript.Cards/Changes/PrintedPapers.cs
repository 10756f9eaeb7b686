using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using ProcScript.Analysis.Comparing;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Changes;

/// <summary>The pages and labels that a pack is printed on. One is void exactly when it comes out otherwise, but for its revision.</summary>
public static class PrintedPapers
{
    /// <summary>What names steps, bags and cards by their number.</summary>
    private static readonly FrozenSet<string> Numbers = FrozenSet.ToFrozenSet(
    [
        "number", "mirror", "bags", "bag", "emptiesBags", "waitsFor", "waitsForCureOf", "before", "meanwhile", "stripStep", "refitStep", "emptyAt",
        "steps", "step", "firstStep", "isolatedAt", "restoredAt", "emptiedAt", "filledAt", "since", "closedAt",
    ], StringComparer.Ordinal);

    /// <summary>The papers of the old pack that say something else than those of the new one, by the headings that are printed on them.</summary>
    public static ImmutableArray<VoidPaper> Void(Plan before, Plan after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var (was, comes) = (PrintedPages.Of(before), PrintedPages.Of(after));
        var now = Of(after).ToDictionary(paper => paper.Place, StringComparer.Ordinal);
        return
        [
            .. from old in Of(before)
               let page = was.GetValueOrDefault(old.Place)
               let printed = comes.GetValueOrDefault(old.Place)
               where page is not null && page != printed
               let fresh = now.GetValueOrDefault(old.Place)
               let onlyNumbers = fresh is not null && old.Title == fresh.Title
                   && PrintedPages.WithoutNumbers(page) == PrintedPages.WithoutNumbers(printed ?? "")
                   && JsonNode.DeepEquals(WithoutNumbers(old.Says), WithoutNumbers(fresh.Says))
               select new VoidPaper(old.Heading, before.Revision, onlyNumbers),
        ];
    }

    private static IEnumerable<Paper> Of(Plan plan)
    {
        var says = JsonSerializer.SerializeToNode(plan, PlanJson.Published.Plan)!.AsObject();
        yield return new Paper("cover", "Cover", "", Part(says, "title", "machineTitle", "variant", "goals", "alerts", "people", "times", "heaviestLift", "hazards",
            "energies.title", "fluids.title", "bags.number"));
        yield return new Paper("before", "Before you start", "", Part(says, "tools", "toolChanges", "orders", "consumables", "ppe", "jobPpe", "certificates", "jobCertificates"));
        yield return new Paper("safe", "Make safe", "", Part(says, "controls", "energies", "fluids"));
        foreach (var card in Cards("Strip", plan.Strip, says["strip"]!.AsArray(), says))
        {
            yield return card;
        }

        foreach (var (bag, node) in plan.Bags.Zip(says["bags"]!.AsArray()))
        {
            var number = bag.Number.ToString(CultureInfo.InvariantCulture);
            yield return new Paper($"bag {number}", $"Bag {number} label: {(bag.Name.Length > 0 ? bag.Name : bag.Stage)}", bag.Stage, Copy(node));
        }

        if (!plan.Work.Steps.IsEmpty)
        {
            yield return new Paper("work", $"Work: {plan.Work.Title}", plan.Work.Title, Card(says["work"], says));
        }

        foreach (var card in Cards("Refit", plan.Refit, says["refit"]!.AsArray(), says))
        {
            yield return card;
        }

        var stages = plan.Strip.Append(plan.Work).Concat(plan.Refit);
        foreach (var over in stages.SelectMany(stage => stage.Steps).Select(step => step.HandOver).OfType<PlanHandOver>())
        {
            var number = over.Step.ToString(CultureInfo.InvariantCulture);
            var lines = string.Join('\n', over.Sections.SelectMany(section => section.Lines).Select(line => line.Text));
            yield return new Paper(string.Create(CultureInfo.InvariantCulture, $"Hand-over {over.Step - 1}"), $"Hand-over card of step {number}", lines, null);
        }

        yield return new Paper("close", "Close out", "", Part(says, "bags", "energies", "fluids", "controls", "discards", "tools.title", "sources", "refit.steps.checks"));
        yield return new Paper("map", "Map", "", Part(says, "map"));
    }

    private static IEnumerable<Paper> Cards(string kind, ImmutableArray<PlanStage> stages, JsonArray cards, JsonObject says) => stages.Select((stage, i) => new Paper(
        string.Create(CultureInfo.InvariantCulture, $"{kind} {i}"),
        string.Create(CultureInfo.InvariantCulture, $"{kind} {i + 1} of {stages.Length}: {stage.Title}"),
        stage.Title,
        Card(cards[i], says)));

    /// <summary>A card with what its head says for the whole job.</summary>
    private static JsonArray Card(JsonNode? card, JsonObject says) => new(Copy(card), Part(says, "jobPpe", "jobCertificates"));

    /// <summary>Some of what a plan says; <c>a.b</c> is of each of the list a its b.</summary>
    private static JsonObject Part(JsonObject says, params IEnumerable<string> names)
    {
        JsonObject part = [];
        foreach (var name in names)
        {
            part[name] = Pick(says, name.Split('.'));
        }

        return part;
    }

    private static JsonNode? Pick(JsonNode? node, ReadOnlySpan<string> path)
    {
        if (node is JsonArray list)
        {
            JsonArray picked = [];
            foreach (var one in list)
            {
                picked.Add(path.IsEmpty ? Copy(one) : Pick(one, path));
            }

            return picked;
        }

        return path.IsEmpty ? Copy(node) : Pick(node?[path[0]], path[1..]);
    }

    /// <summary>A copy without the places in the sources, which are not printed.</summary>
    private static JsonNode? Copy(JsonNode? node) => Without(node, (name, _) => name == "source");

    private static JsonNode? WithoutNumbers(JsonNode? node) => Without(node, (name, value) => Numbers.Contains(name) && IsNumbers(value));

    private static bool IsNumbers(JsonNode? value) => value switch
    {
        JsonArray list => list.All(one => one is JsonValue),
        _ => value is JsonValue,
    };

    private static JsonNode? Without(JsonNode? node, Func<string, JsonNode?, bool> isLeftOut) => node switch
    {
        JsonObject members => new JsonObject(members.Where(member => !isLeftOut(member.Key, member.Value)).Select(member => KeyValuePair.Create(member.Key, Without(member.Value, isLeftOut)))),
        JsonArray list => new JsonArray([.. list.Select(one => Without(one, isLeftOut))]),
        _ => node?.DeepClone(),
    };

    /// <summary>A page or a label.</summary>
    /// <param name="Place">Where it stands in a pack.</param>
    /// <param name="Heading">What is printed over it.</param>
    /// <param name="Title">The part of that which is no number.</param>
    /// <param name="Says">What it says.</param>
    private sealed record Paper(string Place, string Heading, string Title, JsonNode? Says);
}
