using System.Globalization;
using System.Text;
using ProcScript.Analysis;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cli.Tests.Cases;

/// <summary>The steps of every procedure in their order, a line each: what <c>refit.txt</c> holds.</summary>
internal static class OrderText
{
    public static string Of(LibraryReport report)
    {
        StringBuilder text = new();
        foreach (var procedure in report.Procedures)
        {
            var options = string.Concat(procedure.Procedure.Machine.With.Select(option => " with " + option.Name));
            text.Append($"{procedure.Procedure.Job}{options}\n");
            if (procedure.CreatePlan() is { } plan)
            {
                Append(text, "strip", plan.Strip);
                Append(text, "work", [plan.Work]);
                Append(text, "refit", plan.Refit);
            }
            else
            {
                text.Append("  not proven\n");
            }
        }

        return text.ToString();
    }

    private static void Append(StringBuilder text, string part, IEnumerable<PlanStage> stages)
    {
        foreach (var stage in stages.Where(stage => !stage.Steps.IsEmpty))
        {
            text.Append($"  {part}: {stage.Title}\n");
            foreach (var step in stage.Steps)
            {
                var count = step.Count > 1 ? $" {step.Count} ×" : "";
                var derived = step.Derived ? "  (derived)" : "";
                text.Append(CultureInfo.InvariantCulture, $"    {step.Number,3} {step.Verb}{count} {(step.Item.Length > 0 ? step.Item : $"\"{step.Text}\"")}{derived}\n");
            }
        }
    }
}
