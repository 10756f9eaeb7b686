using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Comparing;

/// <summary>Which lines of the lists came, went or say otherwise.</summary>
internal static class ListComparison
{
    /// <summary>The lines that are otherwise, list by list.</summary>
    public static ImmutableArray<ListChange> Of(Plan before, Plan after) =>
        [.. Lists(before).Zip(Lists(after)).SelectMany(pair => Compare(pair.First.Name, pair.First.Lines, pair.Second.Lines))];

    private static IEnumerable<ListChange> Compare(string list, List<Line> before, List<Line> after)
    {
        var was = before.ToLookup(line => line.Title, line => line.Says, StringComparer.Ordinal);
        var now = after.ToLookup(line => line.Title, line => line.Says, StringComparer.Ordinal);
        foreach (var title in after.Concat(before).Select(line => line.Title).Distinct(StringComparer.Ordinal))
        {
            var (old, fresh) = (string.Join("\n", was[title]), string.Join("\n", now[title]));
            if (!was.Contains(title))
            {
                yield return new ListChange(list, "added", title, "", fresh);
            }
            else if (!now.Contains(title))
            {
                yield return new ListChange(list, "dropped", title, old, "");
            }
            else if (old != fresh)
            {
                yield return new ListChange(list, "changed", title, old, fresh);
            }
        }
    }

    private static IEnumerable<(string Name, List<Line> Lines)> Lists(Plan plan)
    {
        yield return ("tools", [.. plan.Tools.Select(tool => new Line(tool.Title, ""))]);
        yield return ("order list", [.. plan.Orders.Select(order => new Line($"{order.Title} ({order.Reason})", Number(order.Count)))]);
        yield return ("consumables", [.. plan.Consumables.Select(used => new Line(used.Title, used.Amount))]);
        yield return ("protective equipment", [.. plan.Ppe.Select(item => new Line(item, plan.JobPpe.Contains(item) ? "on the whole job" : ""))]);
        yield return ("certificates", [.. plan.Certificates.Select(one => new Line(one.Title, plan.JobCertificates.Contains(one.Title) ? "on the whole job" : ""))]);
        yield return ("places", [.. plan.Places.Select(place => new Line(place.Title, $"room for {Number(place.Room)}"))]);
        yield return ("hazards", [.. plan.Hazards.Select(hazard => new Line(hazard.Title, string.Join(", ", hazard.Items)))]);
        yield return ("energies", [.. plan.Energies.Select(energy => new Line(energy.Title, Words(energy)))]);
        yield return ("fluids", [.. plan.Fluids.Select(fluid => new Line(fluid.Title, Words(fluid)))]);
        yield return ("controls", [.. plan.Controls.Select(control => new Line(control.Title, $"home is {control.Home}"))]);
        yield return ("not put back", [.. plan.Discards.Select(discard => new Line(discard.Title, discard.Because))]);
        yield return ("bags", [.. plan.Bags.Select(bag => new Line($"Bag {Number(bag.Number)}", Words(bag)))]);
    }

    private static string Words(PlanEnergy energy) =>
        string.Join("\n", energy.MakeSafe.Select(line => $"{line.Action}: {line.Text}").Append($"restore: {energy.Restore}").Append(energy.Limits)).TrimEnd('\n');

    private static string Words(PlanFluid fluid) =>
        string.Join("\n", new[] { fluid.Charge, fluid.Empty, fluid.Fill, fluid.FillTo, fluid.Band, fluid.LeastRecovered }.Concat(fluid.Changes).Where(text => text.Length > 0));

    private static string Words(PlanBag bag) =>
        string.Join("\n", bag.Contents.Select(line => $"{Number(line.Count)} × {line.Title}{(line.From.Length > 0 ? $", {line.From}" : "")}").Prepend(bag.Name).Where(text => text.Length > 0));

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private sealed record Line(string Title, string Says);
}
