using System.Globalization;
using System.Text;
using ProcScript.Analysis.Plans;

namespace ProcScript.LanguageServer.Features;

/// <summary>The refit of a plan as a page to glance at while one writes: the order and why, without what a card adds.</summary>
internal static class RefitPreview
{
    /// <summary>The page in Markdown.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="addressOf">The address of a file of the library: each step leads to the line that it comes from.</param>
    public static string Markdown(Plan plan, Func<string, string> addressOf)
    {
        var page = new StringBuilder();
        Line(page, $"# Refit: {plan.Title}");
        Line(page, $"{plan.MachineTitle}, revision {plan.Revision}. Derived from the strip and the refit rules. The manufacturer's data, local codes and licensed practice come first.");
        foreach (var card in plan.Refit)
        {
            Line(page, $"## {card.Title}");
            foreach (var step in card.Steps)
            {
                foreach (var alert in step.Alerts)
                {
                    page.Append(CultureInfo.InvariantCulture, $"- **{alert.Word.ToUpperInvariant()}**: {alert.Text}\n");
                }

                page.Append(CultureInfo.InvariantCulture, $"- **{step.Number}** {step.Text}{Behind(", ", step.Torque)}{Behind("; ", step.Because)}");
                page.Append(CultureInfo.InvariantCulture, $"{Reversed(step)}{Bags(step)}; [{step.Source.Path}:{step.Source.Line}]({addressOf(step.Source.Path)}#L{step.Source.Line})\n");
            }

            page.Append('\n');
        }

        return page.ToString();
    }

    private static string Reversed(PlanStep step) => step.Mirror > 0 ? string.Create(CultureInfo.InvariantCulture, $"; reverses step {step.Mirror}") : "";

    private static string Bags(PlanStep step) => step.Bags.IsEmpty ? "" : $"; from bag {string.Join(", ", step.Bags)}";

    private static void Line(StringBuilder page, string text) => page.Append(text).Append("\n\n");

    private static string Behind(string mark, string text) => text.Length > 0 ? mark + text : "";
}
