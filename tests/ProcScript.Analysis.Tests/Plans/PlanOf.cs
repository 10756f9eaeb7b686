using ProcScript.Analysis.Plans;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>Plans from texts.</summary>
internal static class PlanOf
{
    /// <summary>The plan of a procedure of a library of one file, which must be free of errors.</summary>
    public static Plan Text(string text, string path = "x.proc", int procedure = 0)
    {
        var report = LibraryCheck.Run(MemorySourceStore.Of(path, text));
        Assert.Empty(report.Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Finding.Message));
        return Assert.IsType<Plan>(report.Procedures[procedure].CreatePlan());
    }

    /// <summary>Every step, in order.</summary>
    public static IReadOnlyList<PlanStep> AllSteps(this Plan plan) =>
        [.. plan.Strip.SelectMany(card => card.Steps), .. plan.Work.Steps, .. plan.Refit.SelectMany(card => card.Steps)];

    /// <summary>The one step with this text.</summary>
    public static PlanStep Step(this Plan plan, string text) => Assert.Single(plan.AllSteps(), step => step.Text == text);
}
