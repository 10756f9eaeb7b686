using System.Globalization;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Words;

namespace ProcScript.Cards.Reaching;

/// <summary>Steps and lists of a plan as lines for a terminal, with all that keeps people safe: alerts, how energies are made safe, people and lifts.</summary>
internal static class PlanLines
{
    /// <summary>A card.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="stage">The card.</param>
    /// <param name="because">Why a step is needed; empty where nothing is to be said.</param>
    public static IEnumerable<string> Of(Plan plan, PlanStage stage, Func<PlanStep, string> because) => stage.Steps.IsEmpty
        ? []
        : [stage.Title, .. stage.Steps.SelectMany(step => Of(plan, step, because(step))), ""];

    /// <summary>A step with what stands at it.</summary>
    private static IEnumerable<string> Of(Plan plan, PlanStep step, string because)
    {
        foreach (var alert in step.Alerts)
        {
            yield return $"       ! {alert.Word.ToUpperInvariant()}: {alert.Text}";
        }

        var number = step.Number.ToString(CultureInfo.InvariantCulture);
        yield return $"{number,5}  {step.Text}{(step.Where.Length > 0 ? $" ({step.Where})" : "")}{Hands(step)} [{Durations.Exact(step.Seconds)}]";
        foreach (var line in Details(plan, step))
        {
            yield return $"         {line}";
        }

        if (because.Length > 0)
        {
            yield return $"         why: {because}";
        }
    }

    private static string Hands(PlanStep step) =>
        (step.People > 1 ? $", {step.People} people" : "") + (step.Hoist ? ", with a hoist" : "")
        + (step.Kilograms > 0 ? string.Create(CultureInfo.InvariantCulture, $", {step.Kilograms:0.#} kg") : "") + (step.TooHeavy ? ", too heavy for those" : "");

    private static IEnumerable<string> Details(Plan plan, PlanStep step)
    {
        foreach (var how in step.How)
        {
            yield return how;
        }

        if (step.MakeSafe > 0)
        {
            foreach (var line in plan.Energies[step.MakeSafe - 1].MakeSafe.Where(line => !step.How.Contains(line.Text)))
            {
                yield return $"{line.Action}: {line.Text}";
            }
        }

        if (step.Turn.Length > 0)
        {
            yield return step.Turn;
        }

        if (step.Torque.Length > 0)
        {
            yield return $"torque: {step.Torque}{(step.Pattern.Length > 0 ? $", {step.Pattern}" : "")}";
        }

        if (!step.Tools.IsEmpty)
        {
            yield return $"with: {string.Join(", ", step.Tools)}";
        }

        if (!step.Certificates.IsEmpty)
        {
            yield return $"only with: {string.Join(", ", step.Certificates)}";
        }

        if (step.Room > 0)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"place: {step.Place}, room for {step.Room}");
        }

        if (!step.Ppe.IsEmpty)
        {
            yield return $"wear: {string.Join(", ", step.Ppe)}";
        }

        if (!step.NewParts.IsEmpty)
        {
            yield return $"new: {string.Join(", ", step.NewParts.Select(part => part.Text))}";
        }

        foreach (var check in step.Checks)
        {
            yield return $"check: {check}";
        }

        if (step.Reading is { } reading)
        {
            yield return $"reading: {reading.Text} {reading.Limits}".TrimEnd();
        }
    }

    /// <summary>Tools, protective equipment, new parts and what is used up.</summary>
    public static IEnumerable<string> Lists(Plan plan)
    {
        IEnumerable<string?> lists =
        [
            List("Tools", plan.Tools.Select(tool => tool.Title + (tool.Count > 1 ? $" × {tool.Count}" : ""))),
            List("Wear", plan.Ppe),
            List("New parts", plan.Orders.Select(line => $"{line.Count} × {line.Title} ({line.Reason})")),
            List("Used up", plan.Consumables.Select(one => $"{one.Amount} {one.Title}")),
        ];
        return lists.OfType<string>();
    }

    private static string? List(string title, IEnumerable<string> entries) =>
        string.Join("; ", entries) is { Length: > 0 } joined ? $"{title}: {joined}" : null;
}
