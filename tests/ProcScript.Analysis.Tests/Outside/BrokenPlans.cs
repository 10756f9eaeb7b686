using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Proving;
using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Tests.Outside;

/// <summary>Plans in which steps stand in another order than the compiler's, are left out or done twice; some of them are good all the same.</summary>
internal static class BrokenPlans
{
    /// <summary>A list with one such change.</summary>
    public static ImmutableArray<T> Spoil<T>(ImmutableArray<T> list, Random random)
    {
        if (list.IsEmpty)
        {
            return list;
        }

        var at = random.Next(list.Length);
        var other = random.Next(2) == 0 ? Math.Min(at + 1, list.Length - 1) : random.Next(list.Length);
        return random.Next(4) switch
        {
            0 => list.RemoveAt(at),
            1 => list.Insert(other, list[at]),
            2 => list.RemoveAt(at).Insert(Math.Min(other, list.Length - 1), list[at]),
            _ => list.SetItem(at, list[other]).SetItem(other, list[at]),
        };
    }

    /// <summary>The plan with these steps as its strip, and no work.</summary>
    public static Plan WithStrip(Plan plan, ImmutableArray<PlanStep> steps) =>
        plan with { Strip = [new PlanStage("Strip", steps, 0)], Work = plan.Work with { Steps = [] } };

    /// <summary>The plan with its refit spoiled, and whether the compiler's proof accepts that refit.</summary>
    public static (Plan Plan, bool IsProven) SpoilRefit(ProcedureReport report, Plan plan, Random random)
    {
        var steps = plan.Refit.SelectMany(stage => stage.Steps).ToList();
        ImmutableArray<PerformedAction> actions = report.Outcome.Refit!.Actions;
        Assert.Equal(actions.Length, steps.Count);
        var order = Spoil([.. Enumerable.Range(0, steps.Count)], random);
        var strip = report.Outcome.Strip!;
        return (
            plan with { Refit = [new PlanStage("Refit", [.. order.Select(index => steps[index])], 0)] },
            !RefitProof.Failures(strip.Facts, strip, [.. order.Select(index => actions[index])]).Any());
    }
}
